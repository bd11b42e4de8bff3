# Yang dicetak. From memory; needs a native reader who knows rubber.

sheet-meeting = Lembar pertemuan, { $group }
sheet-shares = Bagian pupuk, { $group }
sheet-pickup = Ambil bibit, { $group }
sheet-visits = Kunjungan, { $group }
sheet-holds = Orang yang tidak diganggu, { $group }

sheet-number = Lembar { $number }
sheet-printed = dicetak { $day }
sheet-text-back = Balas baris lewat SMS: LEMBAR { $number }: 3 mati 20, 5 sudah menyiang
sheet-of-people = { $people } orang, { $blocks } blok
sheet-bags = { $bags } karung { $weight } kg dibeli bersama, sisa { $left } kg; sendiri-sendiri: { $alone } karung
sheet-price = { $money } semuanya, sudah dibayar { $held }
sheet-plants = { $plants } bibit dipesan, { $wished } lagi diinginkan
sheet-slots = Empat petani tiap setengah jam; simpan bibit di tempat teduh, tanahnya jangan pecah.
sheet-restricted = Hanya untuk kantor dan penyuluh. Jangan ditinggal sembarangan.

column-row = No.
column-farmer = Petani
column-block = Blok
column-planted = Ditanam
column-alive = Hidup
column-gaps = Kosong
column-due = Tugas
column-dead = Mati
column-filled = Sulam
column-weeded = Siang
column-fed = Pupuk
column-signature = Tanda tangan / jempol
column-trees = Pohon
column-grams = g per pohon
column-kilograms = kg
column-bags = Karung sendiri
column-money = Bayar
column-paid = Lunas
column-received = Diterima
column-time = Jam
column-clone = Klon
column-ordered = Dipesan
column-got = Dapat
column-spare = Cadangan
column-place = Tempat
column-phone = Akhir nomor
column-reason = Mengapa
column-bring = Bawa
column-notes = Catatan
column-since = Sejak
column-until = Sampai

bring-knife = pisau bersih, kantong contoh
bring-count = lembar pertemuan, hitung bersama
bring-tape = meteran dan tali
bring-ear = waktu untuk mendengar
hold-grief = ada yang meninggal di keluarga
hold-open = sampai penyuluh bilang lanjut
