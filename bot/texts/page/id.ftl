# Texts of the office's pages. They may be of any length and have any letters; no SMS says them. From memory; needs a native reader.

# Door
page-come-in = Masuk
page-your-name = Nama lengkap Anda seperti di daftar
page-send-code = Kirim kode ke telepon saya
page-door-help = Telepon tidak ada atau jalur putus? Di komputer itu sendiri kantor bisa meminta kode: budwood office code
page-code-sent = Jika nama ini boleh melihat, sebuah kode dikirim ke teleponnya. Berlaku sepuluh menit.
page-code = Kode
page-code-wrong = Kode itu salah atau sudah terlalu lama.
page-other-name = Nama lain, atau kode baru
page-begin = Ke halaman pertama
page-other-host = Alamat ini bukan milik kami. Pakai alamat dari kantor Anda.
page-other-origin = Formulir ini bukan dari halaman kami. Tidak ada yang dilakukan.
page-old-form = Formulir ini sudah terlalu lama. Tidak ada yang dilakukan.
page-too-many = Terlalu banyak yang mengantre. Coba lagi satu menit lagi.
page-busy = Halaman belum bisa ditampilkan. Coba lagi satu menit lagi.
page-not-yours = Halaman ini bukan untuk Anda.
page-not-there = Halaman ini tidak ada.

# Every page
page-skip = Ke isi
page-menu = Halaman
page-go-out = Keluar
page-today = Hari ini
page-queue = Pesan yang menunggu
page-groups = Kelompok
page-sick = Pohon sakit
page-season = Musim dan hujan
page-stock = Bibit dan pupuk
page-line = Jalur
page-about = Siapa
page-what = Apa
page-is = Isi
page-who = Siapa
page-group = Kelompok
page-why = Mengapa
page-day = Hari
page-block = Blok
page-number = Nomor
page-count = Jumlah
page-yes = ya
page-no = tidak
page-nothing = tidak ada
page-never = belum pernah
page-unknown = tidak diketahui
page-pct = { $pct } %
page-sum = Jumlah
page-late = terlambat
page-new = baru
page-old = lama
page-very-old = sangat lama
page-look-here = periksa
page-minutes-ago = { $count } menit lalu
page-hours-ago = { $count } jam lalu
page-days-ago = { $count } hari lalu

# Today
page-waiting = Pesan yang menunggu seseorang
page-none-waits = Tidak ada pesan menunggu Anda.
page-hours = Jam
page-gathers = Penyakit yang mengumpul
page-none-gathers = Tidak ada penyakit yang mengumpul.
page-sickness = Penyakit
page-reports = Laporan
page-since = Sejak
page-promises = Janji
page-none-promised = Tidak ada janji.
page-to-whom = Kepada
page-by = Sebelum
page-words = Kata Anda
page-visits = Siapa dikunjungi dulu
page-none-to-visit = Tidak ada yang harus dikunjungi.

# The line
page-line-well = Jalur baik.
page-line-held = Pesan ditahan sampai ada yang melepas: budwood release
page-clock = Jam komputer diragukan: pengingat menunggu.
page-leaving = Pesan yang menunggu dikirim: { $count }
page-gateways = Gerbang
page-gateway = Gerbang
page-last-in = Masuk terakhir
page-last-out = Keluar terakhir
page-oldest = Menunggu terlama
page-refused = Ditolak berturut
page-month = Bulan ini
page-parts = Bagian
page-money = Uang
page-budget-gone = Anggaran terpakai
page-held = Tidak dikirim sejak mulai
page-held-answers = Jawaban ke telepon yang terlalu sering
page-held-strangers = Jawaban ke orang asing
page-held-unpaid = Pesan melebihi uang hari atau bulan
page-held-machines = Jawaban ke mesin

# Groups
page-farmers = Petani
page-planted-farmers = Sudah tanam
page-alive-pct = Hidup
page-visited-pct = Dihitung saat kunjungan
page-gaps = Kosong
page-due = Waktunya
page-late-jobs = Terlambat
page-quiet = Diam
page-sick-farmers = Sakit
page-unreached = Tidak terjangkau
page-figures = Dalam angka
page-season-of = Musim per minggu
page-sign-done = selesai
page-sign-seen = dilihat saat kunjungan
page-sign-asked = ditanya lewat pesan
page-sign-late = terlambat
page-members = Petani kelompok
page-blocks = Blok
page-living = Pohon hidup
page-due-jobs = Pekerjaan waktunya
page-heard = Kabar terakhir
page-coming = Pesan 14 hari ke depan, kecuali pekerjaan dilaporkan dulu
page-none-coming = Tidak ada pesan untuk 14 hari ke depan.
page-job = Pekerjaan
page-due-day = Waktunya
page-not-before = Pesan tidak sebelum
page-why-due = sudah waktunya
page-why-again = sudah ditanya, belum dijawab

# A farmer
page-consent = Persetujuan
page-consent-given = diberikan { $day }
page-consent-withdrawn = ditarik { $day }
page-consent-unknown = tidak tercatat: tidak ada pengingat
page-language = Bahasa
page-phones = Telepon berakhir
page-hold = Dibiarkan tenang
page-hold-yes = ya, sekarang
page-land = Lahan
page-planted-on = Ditanam
page-sick-trees = Pohon sakit
page-job-on = { $task } { $day }
page-ready = Kapan tegakan mungkin siap buka sadap: empat dari lima kali di dalam batang; garis adalah hari yang mungkin
page-range = { $block }: mungkin { $likely }, antara { $earliest } dan { $latest } ({ $trees } pohon diukur { $day })
page-facts = Yang dilaporkan
page-none-told = Belum ada laporan.
page-source = Sumber
page-told-by = Dilaporkan oleh
page-told-on = Dilaporkan pada
page-fact = Satu fakta
page-instead-of = Menggantikan
page-text = Pesannya
page-asked-for = ditanya lewat pesan: { $task }
page-put-off = ditunda: { $task }
page-warned = diperingatkan: { $ailment } di dekat
page-under-living = { $name } { $block }: dasar pohon hidup
page-under-sick = { $name } { $block }: dasar pohon sakit
page-fact-line = { $day } { $block }: { $what }

# Sick trees
page-none-sick = Tidak ada penyakit yang belum selesai.
page-trees = Pohon
page-seen-on-visit = Dilihat saat kunjungan
page-on-map = Di peta
page-map = Peta blok dengan pohon sakit; tabel di bawah sama isinya
page-map-signs = Segitiga: akar. Lingkaran: daun. Persegi: tunas. Wajik: rayap. Bintang: lain. Penuh: dilihat saat kunjungan. Plus: tidak ada laporan. Nomor sama dengan tabel.
page-north = U

# Season
page-rains = Hujan
page-rains-begin = Hujan mulai
page-rains-end = Hujan selesai
page-window = Tanam
page-open-since = dibuka sejak { $day }
page-window-shut = belum dibuka
page-rain-told = Yang dilaporkan
page-rain-reports = Hujan empat minggu terakhir
page-none-rain = Tidak ada laporan hujan empat minggu ini.
page-ground = Tanah
page-soaked = basah kuyup
page-dry = tidak hujan
page-millimetres = mm
page-ahead = { $group }: delapan minggu ke depan
page-week-from = Minggu mulai
page-jobs-blocks = Pekerjaan, dengan jumlah blok
page-job-count = { $task } ({ $count })

# Plants and fertiliser
page-plants = { $group }: bibit untuk penanaman nanti
page-none-wanted = { $group }: tidak ada bibit diminta.
page-clone = Klon
page-planting = Penanaman
page-plants-all = Bibit
page-firm = Dipesan
page-wished = Diinginkan
page-nursery = { $group }: bibit pembibitan
page-none-raised = { $group }: tidak ada kabar pembibitan.
page-supply = Tersedia
page-ready-on = Siap pada
page-ordered = Dipesan
page-shared = Dibagi
page-feed = { $group }: pupuk yang waktunya, { $pooled } karung bersama atau { $alone } sendiri-sendiri
page-none-feed = { $group }: tidak ada pupuk yang waktunya.
page-kilograms = kg

# A text that waits
page-no-reading = Tidak ada yang bisa disimpan begitu saja.
page-next = Berikut (N)
page-open-jobs = Pekerjaan terbuka
page-last-facts = Laporan terakhir
page-store = Simpan
page-ask = Tanya lagi pengirim (A)
page-close = Sudah ditangani (C)
page-pass = Teruskan (P)
page-pass-to = Teruskan kepada
page-fix = Ini salah
page-fix-do = Perbaiki
page-right-number = Angka yang benar; kosongkan untuk menarik fakta
page-reason = Mengapa
page-counts-no-more = Ini sudah diperbaiki dan tidak dihitung lagi.
page-not-done = Tidak bisa: sudah dilakukan, atau bukan milik Anda.
