# Indonesian. From memory; needs a native reader who knows rubber.
# Every text fits one SMS of 160 GSM characters at its longest values; a test says so.
# All letters are in the GSM alphabet. Indonesian has no plurals of counted things (CLDR).
# People are called by their name, or not at all, so that no "Pak" or "Bu" can be wrong.

## Numbers and languages

decimal = ,
years-ahead = 0
language-name = Indonesia
language-called = indonesia, bahasa indonesia, indonesian, indonesien, indonesio, indo, tieng indonesia, อินโดนีเซีย, ภาษาอินโดนีเซีย
languages = Bahasa: { $languages }. Balas BAHASA dan pilihannya, misalnya BAHASA id
language-set = Mulai sekarang saya menulis dalam bahasa Indonesia.

## Days

weekday-1 = Sen
weekday-2 = Sel
weekday-3 = Rab
weekday-4 = Kam
weekday-5 = Jum
weekday-6 = Sab
weekday-7 = Min
month-1 = Jan
month-2 = Feb
month-3 = Mar
month-4 = Apr
month-5 = Mei
month-6 = Jun
month-7 = Jul
month-8 = Agu
month-9 = Sep
month-10 = Okt
month-11 = Nov
month-12 = Des
day = { $weekday } { $day } { $month }
day-year = { $day } { $month } { $year }
month-year = { $month } { $year }
span = { $from } s/d { $to }

## What was stored, read back

read-back = { $block }: { $facts }. { $stand }Salah? Balas TIDAK
read-back-rain = { $facts }. Terima kasih. Salah? Balas TIDAK
clause-on = { $clause } { $day }
said-part = { $clause } (sebagian)
said-cleared = lahan sudah dibuka
said-lined = ajir dipasang
said-lined-count = { $count } ajir
said-holes-dug = { $count } lubang digali
said-received-plants = { $count } bibit diterima
said-received-plants-uncounted = bibit diterima
said-received-fertiliser = pupuk diterima{ $amount }
said-received = barang diterima
said-planted = { $count } ditanam
said-dead = tambah { $count } pohon mati
said-dead-none = tidak ada yang mati
said-replaced = { $count } disulam
said-weeded = sudah disiang
said-fertilised = sudah dipupuk{ $amount }
said-sprayed = sudah disemprot
said-pruned = tunas liar dibuang
said-branched = { $count } pohon bercabang
said-branched-uncounted = pohon bercabang
said-not-branched = { $count } pohon belum bercabang
said-not-branched-uncounted = pohon belum bercabang
said-branch-induction = induksi cabang { $count } pohon
said-branch-induction-uncounted = induksi cabang
said-girth = lilit { $number } pohon, rata-rata { $mean } cm
said-girth-share = lilit: { $count } dari { $of } cukup besar
said-height = tinggi { $number } pohon, rata-rata { $mean } cm
said-disease = ada { $ailment }
said-disease-count = { $ailment } di { $count } pohon
said-disease-none = tidak ada yang sakit
said-damage = rusak karena { $cause }
said-damage-count = { $count } pohon rusak karena { $cause }
said-damage-none = tidak ada yang rusak
said-cover-sown = penutup tanah ditanam
said-intercrop-sown = { $species } ditanam
said-intercrop-sown-unnamed = tumpang sari ditanam
said-intercrop-none = tanpa tumpang sari
said-tapping-opened = { $count } pohon buka sadap
said-not-done = belum: { $job }
said-not-done-unnamed = belum dikerjakan
said-rain-soaked = hujan membasahi tanah
said-rain-none = tidak ada hujan
said-rain-mm = hujan { $mm } mm
amount = , { $value } { $unit }

## How the block stands after it

stand-planted = Jumlah { $total }. { "" }
stand-room = Jumlah { $total }, masih muat { $room } lagi. { "" }
living = { $first } dari { $planted }
living-filled = { $first } + { $filled } dari { $planted }
stand-dead = Jumlah mati { $dead }, hidup { $living }. { "" }
stand-alive = Hidup { $living }. { "" }
stand-filled = Hidup { $living }, masih kosong { $gaps }. { "" }
stand-next = Ulangi sekitar { $day }. { "" }
stand-ready = Mungkin siap sadap { $earliest } sampai { $latest }. { "" }
stand-meets = Lilitnya cukup. { $adviser } melihat sebelum disadap. { "" }
stand-close = Hampir siap: ukur semua pohon sebelum disadap. { "" }
stand-early = Belum bisa dikatakan kapan sadap. { "" }
stand-look = Lihat tunas baru mulai { $day }. { "" }
stand-sick = { $adviser } diberi tahu. Jangan cabut atau semprot dulu. { "" }
stand-harm = { $adviser } diberi tahu. Jauhi dahan yang menggantung. { "" }
stand-sick-untold = Jangan cabut atau semprot dulu. { "" }
stand-told = { $adviser } diberi tahu. { "" }
stand-harm-untold = Jauhi dahan yang menggantung. { "" }
stand-label = Ikuti label. Cuci tangan. { "" }

unit-ha = ha
unit-acre = ekar
unit-rai = rai
unit-m2 = m2
unit-kg = kg
unit-g = g
unit-bag = karung
unit-tin = kaleng/ember
unit-cup = gelas/genggam
unit-l = l
unit-m = m
unit-cm = cm
unit-mm = mm
unit-inch = inci
unit-foot = kaki
land = { $hectares } ha

ailment-white_root = jamur akar putih
ailment-leaf_fall = gugur daun
ailment-pink = jamur upas
ailment-leaf_spot = bercak daun
ailment-mildew = embun tepung
ailment-dieback = mati pucuk
ailment-termites = rayap
ailment-other = penyakit

cause-wind = angin
cause-fire = api
cause-flood = banjir
cause-drought = kekeringan
cause-animals = hewan/ternak
cause-theft = pencurian
cause-termites = rayap
cause-other = sebab lain

## Correcting

changed = Diubah di { $block }: { $facts }. { $stand }Salah? Balas TIDAK
moved = Dipindah dari { $old } ke { $block }: { $facts }. { $stand }Salah? Balas TIDAK
block-facts = { $block }: { $facts }
person-facts = { $name } { $block }: { $facts }
confirm-many = { $people }? Balas 1 ya, 2 tidak
many-told = Dicatat: { $people }. Salah? Kirim TIDAK
leader-told = { $name }, { $leader } melaporkan kebun Anda { $facts }. Salah? Balas TIDAK dalam 7 hari. -{ $adviser }
leader-took-back = { $name }, { $leader } menarik laporan kebun Anda { $facts }. -{ $adviser }
contested-notice = { $name } ({ $group }) bilang tidak benar, laporan { $leader }: { $facts }. Sudah dikesampingkan.
fixed-notice = { $adviser } membetulkan { $block }: { $facts }. Salah? Kirim TELEPON SAYA
taken-back = Dibatalkan: { $facts } di { $block }. { $stand }
taken-back-ask = Dibatalkan: { $facts } di { $block }. Yang benar apa? Kirim lagi, misalnya { $example }
taken-back-count = Dibatalkan: { $facts } di { $block }. Angka yang benar berapa?
nothing-to-undo = Tidak ada yang bisa dibatalkan. Untuk lapor tulis pekerjaan dan angka, misalnya { $example }
unsure-change = Yang mana yang salah? Kirim seperti: { $example }

## Asking before storing

confirm = { $block }: { $facts }? { $why }Balas 1 ya, 2 tidak
confirm-for = { $name } { $block }: { $facts }? { $why }Balas 1 ya, 2 tidak
why-area = Lahan hanya muat sekitar { $holds }. { "" }
why-alive = Yang hidup hanya { $alive } pohon. { "" }
why-gaps = Yang kosong hanya { $gaps }. { "" }
why-large = Itu banyak dibanding { $alive } yang hidup. { "" }
why-again = Anda sudah lapor { $count }. { "" }
why-odd = { $value } cm tidak biasa, benar? { "" }
why-shrunk = Dulu rata-rata { $before } cm. { "" }
why-inches = Itu cm, bukan inci? { "" }
why-heaped = Semua berakhir 0 atau 5: mohon dicek. { "" }
why-sum = Bercabang + belum = { $told }, padahal hidup { $alive }. { "" }
why-thin = Rata-rata { $mean } cm, terlalu kecil untuk disadap. { "" }
why-feed = Itu lebih dari 1 kg per pohon. { "" }
why-before = Itu sebelum tanam. { "" }
why-not-planted = Di sana belum ada tanaman. { "" }
why-word = "{ $from }" saya baca "{ $to }". { "" }
why-none = { "" }
ask-block = Blok mana: { $blocks }? Balas namanya.
ask-block-unknown = Blok { $unknown } saya tidak tahu. Yang mana: { $blocks }?
no-blocks = Kebunnya belum ada di daftar, { $name }. { $adviser } akan memasukkan. Tidak ada yang hilang.
ask-count = Berapa { $facts } di { $block }? Balas angkanya.
ask-count-range = { $low } atau { $high } { $facts } di { $block }? Balas satu angka.
ask-values = Berapa cm lilit batang di { $block }? Balas angkanya, misalnya 41 43 39
ask-values-height = Berapa cm tingginya di { $block }? Balas angkanya, misalnya 210 240
ask-date = Hari apa? Balas misalnya 12 Mei atau 3 hari lalu.
ask-for-whom = Untuk siapa? { $people }. Balas nomornya.
dropped = Tidak dicatat. Kirim lagi kapan saja, misalnya { $example }
bare-planted = pohon ditanam
bare-dead = pohon mati
bare-replaced = pohon sulam
bare-holes_dug = lubang digali
bare-tapping_opened = pohon buka sadap
bare-disease = pohon sakit
bare-branched = pohon bercabang
bare-not_branched = pohon
bare-other = pohon

## Not understood, help, leaving

unclear = Maaf, saya belum mengerti. Tulis pekerjaan, angka dan blok, misalnya { $example }
stranger = Nomor ini belum saya kenal. Minta penyuluh memasukkannya ke daftar.
help = Tulis pekerjaan: { $example }, disiang B, dipupuk B. Tanya: APA LAGI, TELEPON SAYA, BAHASA. Salah: TIDAK. Stop SMS: BERHENTI. -{ $adviser }
help-adviser = Per kelompok: STATUS TERLAMBAT MATI KOSONG PESANAN LILIT SIAP SAKIT AKAR ANGIN API HUJAN KLON PETA; DIAM KUNJUNGAN BIAYA TUNGGU. Lagi: LANJUTAN. Stop: BERHENTI
help-adviser-more = Per petani: LILIT SIAP RIWAYAT TAHAN LANJUT HILANG. BERIKUT, SELESAI, SIAPA dan angka akhir. Kelompok: WAKTU TANAM, TAHAN TANAM, PERINGATKAN
example = mati 8 { $block }
stopped = Baik. Tidak ada pengingat lagi ke nomor ini. Catatan disimpan. MULAI untuk kembali, HAPUS DATA SAYA untuk menghapus nama.
started = Selamat datang, { $name }. Pengingat untuk kebun akan datang, sekitar sekali seminggu. Bisa berhenti kapan saja: balas BERHENTI. -{ $adviser }
welcome = Halo { $name }, ini Budwood: SMS tentang pekerjaan kebun karet, sekitar sekali seminggu. Balas dengan kata sendiri. Bahasa lain: BAHASA. Stop: BERHENTI. -{ $adviser }
same-again = Itu sudah saya catat, terima kasih.

## Farmers ask

now = { $name }, sekarang: { $tasks }. Mohon kabari kalau sudah. -{ $adviser }
now-nothing = { $name }, sekarang tidak ada pekerjaan. Berikutnya: { $task } { $block } sekitar { $day }. -{ $adviser }
now-none = { $name }, tidak ada tugas dan belum ada tanggal. Tulis yang sudah dikerjakan, misalnya { $example }. -{ $adviser }
my-blocks = { $blocks }
my-block = { $block }: hidup { $living }, tanam { $day }
my-block-empty = { $block }: belum ditanam
when-task = { $task } di { $block }: sekitar { $day }. -{ $adviser }
when-tap = { $name }, { $block } mungkin siap sadap sekitar { $likely }, antara { $earliest } dan { $latest }. Dasarnya { $trees } pohon; ukuran berikut lebih pasti. -{ $adviser }
when-tap-unknown = { $name }, lilit batang { $block } belum diketahui, jadi belum bisa dijawab. Ukur bila diminta. Jangan sadap sebelum { $adviser } melihat.
when-tap-early = { $name }, belum bisa dikatakan kapan { $block } siap sadap: { $trees } pohon belum cukup. Ukur bila diminta. Jangan sadap sebelum { $adviser } melihat.
how-many-plants = Untuk { $area } kira-kira { $points } bibit; pesan { $order } untuk cadangan. Jumlah ajir yang menentukan. -{ $adviser }
how-much-feed = { $block }: { $dose }. Siangi dulu, tanah lembap, melingkar { $ring }. -{ $adviser }
feed-sum = { $trees } x { $grams } g = { $kilograms } kg
feed-doses = { $trees } pohon, { $products } per pohon: { $kilograms }
feed-brief = { $trees } x { $products } g = { $kilograms } kg
feed-grams = { $product } { $grams } g
feed-weight = { $kilograms } kg
feed-ring = di bawah tepi tajuk, paling jauh 1 m dari batang
how-much-unknown = Sebutkan luasnya, misalnya: berapa bibit untuk 1,2 ha. Atau tanya { $adviser }: TELEPON SAYA
may-tap-no = { $name }, belum: { $block } dibuka bila lilit { $girth } cm pada { $share }% pohon. Pohon kecil yang disadap tetap kecil. -{ $adviser }
may-tap-no-usual = { $name }, belum: { $block } biasanya dibuka sekitar { $girth } cm pada { $share }% pohon, { $adviser } yang memutuskan. Pohon kecil yang disadap tetap kecil.
may-tap-check = { $block } sudah hampir siap, { $name }. { $adviser } mengukur dulu. Jangan sadap dulu.
may-plant-wait = { $name }, mohon tunggu. Kabar tanam untuk { $group } belum ada. Simpan bibit di tempat teduh dan basah. -{ $adviser }
may-plant-yes = Ya, { $name }: kabar tanam datang { $day }. Tanam di tanah basah, paling lama 3 hari sesudah bibit datang. -{ $adviser }
may-fill-yes = Ya: sulam { $block } paling lambat { $day } selagi tanah basah, klon sama, bibit kuat. -{ $adviser }
may-fill-wait = Jangan dulu: hujan tinggal sedikit untuk bibit baru di { $block }. Bisa lagi mulai { $day }. -{ $adviser }
may-fill-late = Sebaiknya tidak di { $block }: sesudah { $months } bulan bibit baru kalah dan tetap kecil. Tanya { $adviser } dulu.
may-spray = Saran semprot tidak lewat SMS. Ikuti label dan hukum setempat, tanya orang terlatih. Lindungi badan, tanpa angin, jauh dari kulit batang dan air. TELEPON SAYA
may-other = Lebih baik tanya { $adviser } dulu. Tulis TELEPON SAYA, nanti ditelepon.
may-yes = Boleh, { $name }: { $task } di { $block } sudah waktunya, paling lambat { $day }. -{ $adviser }
who = Ini layanan karet dari { $adviser }. Kami tidak pernah minta uang atau PIN. Untuk stop SMS: BERHENTI, untuk bantuan: BANTUAN.
my-data = Kami simpan: nama, nomor ini, kelompok { $group }, { $blocks }, laporan, persetujuan { $consent }. Salah? Tulis TELEPON SAYA
consent-none = belum ada
call-me = { $name }, { $adviser } akan menelepon. Kalau ada bahaya, pergi dulu ke tempat aman.
call-me-untold = { $name }, sekarang tidak ada yang bisa saya hubungi: telepon sendiri. Kalau ada bahaya, pergi dulu ke tempat aman.
call-me-notice = Telepon { $name } ({ $group }), nomor akhir { $digits }: diminta { $day }.
alarm-notice = Tolong segera hubungi { $name } ({ $group }), nomor akhir { $digits }: pesan { $day } mungkin tentang { $alarm }.
alarm-grief = duka
alarm-danger = bahaya
alarm-illness = sakit
alarm-complaint = keluhan
alarm-money = uang
alarm-fire = api
alarm-snake = gigitan ular
alarm-number = nomor baru atau ponsel hilang
matter-notice = { $name } ({ $group }), nomor akhir { $digits }, kirim { $day }: { $alarm }. Untuk membaca: BERIKUT
concern-call-me = minta ditelepon
concern-question = pertanyaan
concern-unclear = tidak dimengerti
first-fire = Jauhkan semua orang dari api dan asap sekarang. Teriak minta tolong. Jangan padamkan sendiri. { $told }
first-snake = Jangan banyak gerak, segera ke puskesmas. Luka jangan disayat, disedot atau diikat. { $told }
first-danger = Pergi dulu ke tempat aman dan panggil orang di dekat Anda. { $told }
first-illness = Kalau parah, ke puskesmas sekarang. Luka berdarah ditekan kain bersih. { $told }
told-adviser = { $adviser } sudah saya beri tahu.
told-nobody = Belum ada yang diberi tahu: minta tolong orang di dekat Anda.
grief = { $name }, turut berduka cita. { $told } Tidak ada pengingat sampai { $adviser } mengizinkan.
told = Terima kasih, { $name }. { $adviser } sudah saya beri tahu dan bisa membaca pesan ini.
not-told = { $name }, saya tidak bisa menjawab dan tidak bisa memberi tahu { $adviser }. Tanyakan langsung.
only-done = Yang dicatat hanya kerja Anda yang sudah selesai. Kalau sudah, tulis misalnya { $example }
sick-notice = { $name } { $block } ({ $group }): { $facts }.
cluster-notice = { $group }: { $ailment } di { $count } tempat sejak { $day }. Lihat dulu. Lalu PERINGATKAN { $group } untuk tetangga. Jangan semprot dulu.
warn-ask = { $group }: { $ailment } di { $count } tempat. Bila sudah dilihat, { $blocks } kebun di dekatnya akan diminta melihat juga. Balas YA { $code }
warn-done = { $blocks } kebun di dekat { $group } akan diminta melihat: { $ailment }.
warn-none = Tidak ada wabah di { $group }, atau tidak ada pohon di dekatnya. Daftar: SAKIT { $group }
girth-notice = { $name } { $block } ({ $group }): lilit batang terlambat kira-kira { $months } bulan. Perlu dilihat.
open-notice = { $name } { $block } ({ $group }): dari { $trees } pohon, { $share }% cukup besar untuk sadap. Lihat dulu. Lalu tulis untuk { $name }: buka sadap dan jumlahnya.
no-answer = Itu tidak bisa saya jawab. { $adviser } bisa membantu: TELEPON SAYA. Untuk tugas berikutnya tulis: APA LAGI
later = Baik, { $name }: { $task } di { $block } lagi sekitar { $day }. -{ $adviser }
nothing-open = Tidak ada yang menunggu jawaban. Untuk tugas berikutnya tulis: APA LAGI
done = Terima kasih, { $name }. Dicatat selesai { $day }: { $task } di { $block }. Salah? Balas TIDAK
erase-ask = Nama, nomor dan pesan akan dihapus selamanya. Kalau setuju balas YA { $code }
erased = Selesai. Nama, nomor dan pesan sudah dihapus. Angka kebun tetap ada tanpa nama. Cadangan lama masih menyimpannya sampai dibuang.
nothing-held = Kami tidak menyimpan nama untuk nomor ini. Tidak ada lagi yang perlu dihapus.
code-wrong = Kodenya salah. Tidak ada yang dilakukan.
code-locked = Terlalu banyak kode, atau kode salah. Tidak ada yang dilakukan; kode tidak berlaku sehari. Bukan dari Anda? Beri tahu kantor.
visit-ask = Untuk menulis bagi { $name } dan lainnya sampai sore balas YA { $code }. Bukan dari Anda? Jangan jawab, beri tahu kantor.
stop-ask = Tidak mau SMS lagi, juga kalau petani dalam bahaya? Kalau setuju balas YA { $code }
held-back = Pesan Anda banyak. Nanti dijawab lagi. Kalau ada bahaya, telepon minta tolong.
digest = { $count } kabar lagi dalam satu jam. Tanyakan: { $people }

## Jobs in one or two words

job-order_plants = pesan bibit
job-dig_pits = gali lubang
job-plant = tanam
job-survival_check = cek pohon mati
job-backfill = sulam
job-weed = menyiang
job-feed = pupuk
job-prune = wiwil
job-induce_branching = induksi
job-look_at_induced = lihat tunas
job-root_check = cek akar
job-girth_census = ukur lilit
job-clear = buka lahan
job-line = pasang ajir
job-mulch = beri mulsa
job-firebreak = sekat api
job-count_tall = cek pohon tinggi
job-get_ready = bersiap
job-open = buka sadap
job-fill_pits = timbun lubang
job-sow_cover = tanam penutup
job-leaf_check = cek daun
job-intercrop = tumpang sari
job-open_rest = sadap sisanya
job-rain_watch = kabar hujan
job-hand_over = serah terima
walk-every = tiap { $every } pohon mulai no. { $from }
walk-all = semua baris
pit-edge = { $cm } cm
pit-round = bulat { $wide } cm, dalam { $deep }
datum-ground = { $cm } cm dari tanah
datum-union = { $cm } cm dari okulasi
usual = sekitar { $value }
kind-cleared = buka lahan
kind-lined = pasang ajir
kind-holes_dug = gali lubang
kind-received = penerimaan
kind-planted = tanam
kind-dead = hitung
kind-replaced = sulam
kind-weeded = menyiang
kind-fertilised = pupuk
kind-sprayed = semprot
kind-pruned = wiwil
kind-branched = cabang
kind-not_branched = cabang
kind-branch_induction = induksi
kind-girth = ukur
kind-height = ukur
kind-disease = periksa
kind-damage = periksa
kind-cover_sown = tabur
kind-intercrop_sown = tabur
kind-tapping_opened = buka sadap
kind-not_done = kerja
kind-rain = hujan

## Nudges. One job, a date, one reply word.

nudge-order_plants = { $name }, untuk { $block } mohon pesan { $trees } bibit okulasi paling lambat { $by }. Minta yang bersertifikat. Sudah? Balas SELESAI. -{ $adviser }
nudge-dig_pits = { $name }, mohon gali lubang di { $block } paling lambat { $by }: { $trees } lubang, { $pit }. Beri tanda, jauhkan anak-anak. Balas LUBANG dan angka. -{ $adviser }
nudge-plant = { $name }, mohon tanam { $block } paling lambat { $by } selagi tanah basah: { $trees } bibit. Lepas polibag, tanah jangan pecah, padatkan. Balas TANAM dan angka. -{ $adviser }
nudge-survival_check = { $name }, mohon periksa tiap baris di { $block } paling lambat { $by }. Dari { $trees } pohon, berapa mati? Balas MATI dan angka, 0 juga boleh. -{ $adviser }
nudge-backfill = { $name }, di { $block } ada { $trees } tempat kosong. Sulam paling lambat { $by } selagi tanah basah, klon sama. Balas SULAM dan angka. -{ $adviser }
nudge-weed = { $name }, mohon siangi baris di { $block } paling lambat { $by }. Dekat batang pakai tangan, jauhkan parang dari kulit batang dan badan. Balas DISIANG. -{ $adviser }
nudge-feed = { $name }, pupuk { $block } paling lambat { $by }: { $dose }. Siangi dulu, tanah basah, jauh dari batang. Pakai sarung tangan. Balas PUPUK. -{ $adviser }
nudge-prune = { $name }, mohon buang tunas samping di bawah { $height } m di { $block } paling lambat { $by }, selagi kecil. Dari tanah, jangan memanjat. Balas WIWIL. -{ $adviser }
nudge-induce_branching = { $name }, { $trees } pohon tinggi di { $block } belum bercabang. Hanya dengan cara yang sudah diajarkan, sebelum { $by }. Jangan memanjat. Balas INDUKSI dan angka. -{ $adviser }
nudge-look_at_induced = { $name }, sebelum { $by } lihat pohon yang diinduksi di { $block }. Ada tunas? Lepas ikatannya, supaya pucuk tidak mati. Balas BERCABANG dan angka. -{ $adviser }
nudge-root_check = { $name }, mohon periksa akar di { $block } paling lambat { $by }. Ada benang putih di pangkal batang? Balas AKAR PUTIH dan angka, 0 boleh. Jangan cabut. -{ $adviser }
nudge-girth_census = { $name }, ukur lilit { $trees } pohon di { $block }, { $datum }, paling lambat { $by }: { $walk }, kecil juga. Balas LILIT dan angka. -{ $adviser }
nudge-clear = { $name }, bibit { $block } sudah pasti? Tebang, bersihkan sebelum { $by }: penebang terlatih, orang lain sejauh 2x tinggi pohon, jangan bakar. Balas SELESAI. -{ $adviser }
nudge-line = { $name }, mohon pasang ajir di { $block } paling lambat { $by }, datar, melintang bila lereng: sekitar { $trees } ajir. Sudah? Balas SELESAI. -{ $adviser }
nudge-mulch = { $name }, musim kering datang. Beri mulsa di { $block } paling lambat { $by }, 20 cm dari batang, teduhi yang lemah. Balas SELESAI. -{ $adviser }
nudge-firebreak = { $name }, mohon buat sekat api { $width } m di sekeliling { $block } paling lambat { $by }. Potong gulma, jangan bakar, parang jauh dari badan. Balas SELESAI. -{ $adviser }
nudge-count_tall = { $name }, mohon hitung di { $block } paling lambat { $by } pohon di atas { $height } m tanpa cabang. Balas BELUM BERCABANG dan angka, 0 juga boleh. -{ $adviser }
nudge-get_ready = { $name }, { $block } mungkin disadap dalam setahun. Tanya { $adviser } soal sekolah sadap paling lambat { $by }. Jangan beli alat, jangan sadap dulu. Balas SELESAI.
nudge-open = { $name }, { $block } memenuhi syarat: { $share }% pohon { $girth } cm. { $adviser } melihat dulu sebelum dibuka, paling lambat { $by }. Sadap hanya pohon bertanda.
nudge-open-usual = { $name }, { $block }: { $share }% pohon { $girth } cm. { $adviser } melihat dulu sebelum dibuka, paling lambat { $by }. Sadap hanya pohon bertanda.
nudge-fill_pits = { $name }, mohon timbun lubang di { $block } paling lambat { $by }: tanah atas dulu, ajir di tengah. Jauhkan anak-anak. Balas SELESAI. -{ $adviser }
nudge-sow_cover = { $name }, mohon tabur penutup tanah di antara baris { $block } paling lambat { $by } selagi basah, jauh dari bibit. Balas SELESAI. -{ $adviser }
nudge-leaf_check = { $name }, mohon lihat daun di { $block } paling lambat { $by }. Balas BERCAK DAUN atau GUGUR DAUN dan angka, SELESAI bila sehat. Jangan semprot. -{ $adviser }
field-round = { $name }, keliling { $block } sebelum { $by }: { $jobs }. Parang jauh dari badan, jangan panjat, cabut, semprot. Balas SELESAI/hasil. -{ $adviser }
round-done = Terima kasih, { $name }. Keliling { $block } dicatat selesai { $day }, tidak ada yang sakit. Salah? Balas TIDAK
walk-then = { ", " }
walk-weeds = gulma
walk-shoots = tunas
walk-roots = akar
walk-leaves = daun
walk-crops = sela
nudge-near = { $name }, ada { $ailment } di dekat Anda. Lihat { $block } sebelum { $by }. Balas { $ailment } dan angka, 0 bila tidak ada. Jangan cabut atau semprot. -{ $adviser }
nudge-intercrop = { $name }, tanaman sela di { $block }? Jarak { $distance } m dari karet. Paling lambat { $by } balas TUMPANG SARI dan nama, SELESAI bila tidak. -{ $adviser }
nudge-open_rest = { $name }, { $trees } pohon di { $block } masih kecil. Ukur { $datum } paling lambat { $by }. { $adviser } melihat dulu sebelum dibuka. Balas LILIT dan angka.
nudge-rain_watch = { $name }, apakah hujan sudah membasahi tanah { $block } sejak { $since }? Balas HUJAN YA atau HUJAN TIDAK, untuk waktu tanam. -{ $adviser }
nudge-hand_over = Selamat, { $name }. { $block } kini kebun sadap, pengingat ini selesai. Catatan tetap ada. Perlu bantuan? Balas TELEPON SAYA. -{ $adviser }

## The adviser asks

waiting-list = Menunggu { $count }, paling lama { $hours } jam: { $people }. Untuk membaca: BERIKUT
waiting-none = Tidak ada pesan yang menunggu Anda.
waiting-person = { $name } { $hours }j
waiting-next = { $name } ({ $group }) { $digits }, { $hours } jam, { $concern }. Sudah diurus? SELESAI: { $text }
waiting-next-store = { $name } ({ $group }) { $digits }, { $hours } jam. Catat { $block }: { $facts }? Balas 1. Sudah diurus? SELESAI: { $text }
waiting-next-choose = { $name } ({ $group }) { $digits }, { $hours } jam. Catat { $readings }? Balas nomornya. Sudah diurus? SELESAI: { $text }
waiting-reading = { $number } { $block } { $facts }
waiting-next-number = { $name } ({ $group }) { $digits }, { $hours } jam. Hilang? HILANG { $name }. Baru? PINDAH { $name } + nomor. SELESAI: { $text }
waiting-closed = Selesai: { $name }. Masih menunggu: { $count }.
waiting-old = { $count } pesan menunggu lebih { $hours } jam, satu dari { $name } ({ $group }). Untuk membaca: BERIKUT
held = { $name } tidak diingatkan sampai Anda tulis LANJUT { $name }
held-until = { $name } tidak diingatkan sampai { $day }. Untuk mulai lagi: LANJUT { $name }
gone-on = { $name } diingatkan lagi.
not-held = { $name } memang masih diingatkan.

## A text or a group goes to a colleague
pass-whom = Kepada siapa? Yang bisa: { $people }
pass-nobody = Tidak ada orang lain di daftar yang bisa mengambilnya.
pass-none = Belum ada pesan yang dibaca. Untuk membaca: BERIKUT
passed = Diteruskan ke { $adviser }: pesan { $name }. Masih menunggu: { $count }
passed-notice = { $adviser } meneruskan pesan { $name } ({ $group }) kepada Anda. Untuk membaca: BERIKUT
hand-ask = Mulai sekarang { $name } mengurus { $groups }: { $farmers } petani, { $waiting } pesan, { $owed } janji, { $sick } sakit? Balas YA { $code }
handed = { $name } sekarang mengurus { $groups } dan sudah diberi tahu: { $farmers } petani, { $waiting } pesan, { $owed } janji, { $sick } sakit.
handed-notice = { $adviser } menyerahkan { $groups } kepada Anda: { $farmers } petani, { $waiting } pesan, { $owed } janji, { $sick } sakit. TUNGGU, PEKAN SAYA, SAKIT

## What an adviser owes to whom
promised = Dicatat no. { $number }, sampai { $day }: { $text }. Kalau sudah: DITEPATI { $number }
promise-kept = Selesai: { $text }. Masih dijanjikan: { $count }
promise-none = Tidak ada janji seperti itu. Untuk melihat janji: PEKAN SAYA
promise-full = Ada { $count } janji terbuka. Selesaikan dulu: PEKAN SAYA
owed = { $number } { $text } ({ $day })
owed-call = telepon { $name } ({ $day })

## An adviser's own words to a group or a person
announce-ask = { $phones } ponsel, 1 pesan tiap ponsel{ $cost }, { $when }{ $left }. Kirim? Balas YA { $code }. Isi: { $text }
announce-cost = , biaya { $cost }
announce-now = sekarang
announce-later = { $day } mulai { $time }
announce-left = ; { $count } tidak (istirahat, BERHENTI)
announced = Sedang dikirim ke { $phones } ponsel, { $when }{ $left }.
announcement = { $text } -{ $adviser }
announce-nobody = Sekarang tidak ada orang { $name } yang bisa dikirimi pesan: istirahat, BERHENTI atau tanpa ponsel. Tidak ada yang dikirim.
announce-long = Terlalu panjang { $count } huruf untuk satu pesan. Tidak ada yang dikirim.
announce-empty = Apa pesannya? Tulis KABARI { $name } dan di belakangnya pesan Anda.

## A phone is lost or found, a number is another one
phone-lost-ask = Ponsel { $people }, akhir { $digits }, hilang? Ponsel itu tidak diberi pesan dan tidak bisa mengubah apa-apa. Balas YA { $code }
phone-lost = Ditahan: ponsel { $people }, akhir { $digits }. Sudah ketemu: KETEMU { $name }. Nomor baru: PINDAH { $name } dan nomornya.
phone-lost-adviser = Ditahan: ponsel { $people }, akhir { $digits }. Nomor baru dicatat kantor di daftar.
phone-found-ask = Ponsel { $people }, akhir { $digits }, sudah kembali ke pemiliknya? Balas YA { $code }
phone-found = Ponsel { $people }, akhir { $digits }, berlaku lagi.
phone-none = { $name } tidak punya ponsel lain di daftar.
phone-is-lost = Ponsel ini tercatat hilang: tidak ada yang diberitahukan atau diubah. Pesan Anda disimpan. Tidak hilang? Temui penyuluh Anda.
number-ask = Nomor { $name } sekarang { $number }? Nomor lama ({ $digits }) tidak berlaku lagi. Balas YA { $code }
number-moved = Nomor { $name } sekarang berakhir { $digits }. Pesan dari nomor lama tidak dihitung lagi.
number-own = Nomor Anda sendiri diganti lewat daftar kantor, bukan pesan. Ponsel Anda hilang: HILANG dan nama Anda, dari ponsel lain.
number-unread = Bukan nomor ponsel negara ini. Tidak ada yang diubah. Tulis PINDAH { $name } dan nomor lengkap.
number-taken = Nomor berakhir { $digits } milik orang lain. Tidak ada yang diubah. Dipakai bersama? Kantor mencatatnya di daftar.
status = { $group } { $day }: { $farmers } petani, { $planted } tanam, hidup { $alive }. { $due }{ $late }{ $check }Diam { $quiet }, sakit { $sick }{ $peace }
status-due = Tugas: { $tasks }. { "" }
status-due-none = Tidak ada tugas. { "" }
status-late = Terlambat: { $tasks }. { "" }
status-late-none = Tidak ada yang terlambat. { "" }
status-check = Perlu dicek untuk buka { $count }. { "" }
left-in-peace = . Tidak diganggu { $count }
feed-lost = . Pupuk terlewat dalam { $days } hari: { $count }, lihat { $name }
alive-pct = { $pct }%
alive-pct-visited = { $pct }% (dikunjungi { $visited }%)
alive-unknown = belum ada
task-count = { $task } { $count }
more = +{ $count }
more-jobs = { $count } lain
more-none = Itu semuanya.
status-all = { $groups }
status-line = { $group } hidup { $alive } terlambat { $late } diam { $quiet } sakit { $sick }
late-all = Terlambat: { $groups }
gaps-all = Kosong: { $groups }
sick-all = Sakit: { $groups }
group-count = { $group } { $count }
group-first = { $group } { $count } ({ $first })
gaps-order = { $order ->
    [0] terlambat disulam
   *[other] pesan { $order }
  }
late-list = Terlambat { $group }: { $people }{ $peace }{ $lost }
late-none = Tidak ada yang terlambat di { $group }{ $peace }{ $lost }.
late-person = { $name } { $task } { $days }hr
late-person-told = { $name } { $task } { $days }hr diingatkan 3x
quiet-list = Diam lebih { $limit }h: { $people }{ $why }
quiet-none = Tidak ada yang diam lebih dari { $limit } hari{ $why }.
quiet-person = { $name } { $days }hr
quiet-person-never = { $name } belum pernah
gaps-list = Kosong { $group }: { $gaps } pada { $farmers } petani, { $order ->
    [0] terlambat disulam
   *[other] pesan { $order } dengan cadangan
  }. { $people }
gaps-none = Belum ada tempat kosong yang tercatat di { $group }. { $uncounted } blok belum dihitung.
gaps-person = { $name } { $gaps }
sick-list = Sakit { $group }: { $people }
sick-list-cluster = Sakit { $group }: { $ailment } di { $count } tempat sejak { $day }, lihat dulu. { $people }
sick-none = Tidak ada laporan sakit di { $group } dalam { $limit } hari.
sick-person = { $name } { $ailment } { $count }
visit-list = Kunjungi dulu: { $people }{ $peace }
visit-none = Belum ada yang perlu dikunjungi{ $peace }.
visit-cluster = { $name } { $ailment } di { $count } tempat
visit-lost = { $name } mati { $pct }%
visit-quiet = { $name } diam { $days }hr
visit-ending = { $name } { $task } sisa { $days }hr
feed-group = Pupuk { $group }: { $farmers } petani, { $trees } pohon, { $kilograms } kg. Karung 50 kg: bersama { $pooled }, sendiri-sendiri { $alone }. { $people }
girth-list = Lilit { $group }: { $people }
girth-none = Belum ada lilit yang diketahui di { $group }.
feed-none = Di { $group } belum waktunya memupuk.
member = { $name } ({ $group }): { $blocks }. Pesan terakhir { $day }
member-told = { $name } ({ $group }): { $blocks }. Kabar terakhir { $day }, belum ada pesan
member-never = { $name } ({ $group }): { $blocks }. Belum ada pesan
member-block = { $block } hidup { $living }, tanam { $day }{ $due }
member-block-empty = { $block } { $area }, belum ditanam{ $due }
member-due = , { $task } { $day }
member-girth = , lilit { $mean } cm ({ $of }), { $against }{ $ready }
member-behind = tertinggal { $months } bln
member-ahead = maju { $months } bln
member-ready = , siap sadap { $earliest } sampai { $latest }
member-no-blocks = tidak ada blok
member-which = Yang mana? { $people }
window-ask = Buka musim tanam di { $group } mulai { $day }? { $rain }{ $farmers } petani akan diberi tahu. Balas YA { $code }
window-opened = Musim tanam di { $group } dibuka mulai { $day }. { $farmers } petani akan diberi tahu.
rain-open = Hujan 10 hari: basah di { $soaked } dari { $reporters }, tampak siap tanam. { "" }
rain-hold = Hujan 10 hari: basah di { $soaked } dari { $reporters }, tunggu. { "" }
rain-few = Hujan 10 hari: baru { $reporters } kabar. { "" }
rain-begun-notice = { $group }: hujan membasahi tanah di { $soaked } dari { $reporters } sejak { $day }. Kering masih bisa datang. Buka musim tanam: WAKTU TANAM { $group }
rain-stopped-notice = { $group }: tidak ada hujan yang membasahi tanah sejak { $day }, mungkin belum musim hujan. Jangan buka dulu; bibit perlu naungan dan air.
rain-stopped-notice-open = { $group }: tidak ada hujan yang membasahi tanah sejak { $day }, mungkin belum musim hujan. Untuk menahan: TAHAN TANAM { $group }
hold-none = Musim tanam di { $group } belum dibuka, tidak ada yang ditahan.
hold-ask = Tahan musim tanam di { $group }? Pengingat tanam berhenti ({ $farmers } petani) sampai dibuka lagi. Balas YA { $code }
planting-held = Musim tanam di { $group } ditahan mulai { $day }. Buka lagi: WAKTU TANAM { $group }
not-your-group = Kelompok atau petani yang mana? Di daftar Anda: { $groups }

## For the operator: how the service is

operator-well = Semua baik. { $state }
operator-trouble = Mohon periksa layanan pesan: { $troubles }. { $state }
operator-state = Pesan masuk terakhir { $hours } jam lalu, { $waiting } belum terkirim. Bulan ini { $parts } bagian{ $share }.
operator-state-silent = Belum ada pesan masuk, { $waiting } belum terkirim. Bulan ini { $parts } bagian{ $share }.
operator-share = , { $pct }% anggaran
operator-refused = { $gateway } tidak menerima pesan
operator-down = { $gateway } tidak tersambung
operator-silent = { $days } hari tidak ada pesan masuk lewat { $gateway }
operator-oldest = ada pesan belum terkirim { $hours } jam
operator-disk = disk hampir penuh
operator-spent = anggaran bulan ini habis
operator-budget = { $pct }% anggaran bulan ini habis, { $parts } bagian. { $stops }
operator-stops-none = Belum ada yang berhenti.
operator-stops-some = Orang luar tidak dijawab lagi. Pengingat berhenti di 90 dan 95%, jawaban di 100%.
operator-stops-all = Sampai akhir bulan hanya kode, BERHENTI, pertolongan pertama dan kabar.

## The adviser asks more. A fact is known by a visit, a list, a leader, or an own text: a letter each.

source-visit = K
source-sheet = D
source-leader = T
source-text = P
untold = tidak disebut
quiet-failing = { $person } ponsel gagal
quiet-resting = . Istirahat { $count }
quiet-idle = . Tanpa tugas { $count }
dead-all = Mati: { $groups }
dead-line = { $group } { $dead } dari { $planted }
dead-list = Mati { $group }: { $dead } dari { $planted } ({ $pct }%). { $people }{ $uncounted }
dead-person = { $name } { $pct }% { $source }
dead-uncounted = . Belum dihitung { $count }
dead-parts = Mati { $group }: { $dead } dari { $planted } ({ $pct }%). { $parts }
dead-part = { $what } { $count }
clone-all = Klon: { $groups }
clone-list = Klon { $group }: { $clones }
clone-none = Belum ada pohon ditanam di { $group }.
clone-share = { $clone } { $pct }% (mati { $dead } dari { $planted })
order-all = Pesanan: { $groups }
order-list = Pesanan { $group }: { $plants } bibit, { $farmers } petani, { $land }. Pasti { $firm }, rencana { $wished }{ $by }. { $parts }
order-none = Belum ada yang punya hari tanam di { $group }.
order-part = { $clone } { $plants } { $day }
order-by = , pesan sebelum { $day }
order-firm = pasti { $firm }
feed-all = Karung: { $groups }
feed-share = { $name } { $kilograms } kg
work-all = { $task }: { $groups }
work-line = { $group } sudah { $done } perlu { $due } telat { $late }
work-round = { $group } { $task }: sudah { $done }, perlu { $due }, telat { $late }. { $people }
root-all = Akar: { $groups }
root-round = Akar { $group }: dicek { $done }, perlu { $due }, telat { $late }. { $found }
root-none = Tidak ada laporan jamur akar putih.
fire-all = Sekat api: { $groups }
fire-round = Sekat api { $group }: sudah { $done }, perlu { $due }, telat { $late }. Terbakar: { $found }
fire-none = tidak ada kabar
wind-all = Pohon rusak karena angin: { $groups }
wind-list = Angin { $group }, { $days }hr: { $farmers } dari { $of } lapor, { $trees } pohon. { $people }
wind-none = Tidak ada laporan angin di { $group } dalam { $days } hari.
girth-all = Blok diukur: { $groups }
girth-one = { $name } { $block } { $day } { $source }: { $trees } pohon, rata-rata { $mean } cm, ragam { $spread }%, terkecil { $smallest }. { $against }
girth-share = { $name } { $block } { $day } { $source }: { $count } dari { $of } pohon cukup besar
girth-unknown = Belum ada lilit dari { $name }.
ready-one = { $name } { $block }: sadap sekitar { $likely }, antara { $earliest } dan { $latest }, dari { $trees } pohon
ready-close = { $name } { $block }: hampir, ukur dan lihat sebelum dibuka
ready-early = { $name } { $block }: terlalu dini, baru { $trees } pohon
ready-unknown = { $name } { $block }: belum ada lilit
ready-opened = { $name } { $block }: sudah disadap
ready-group = Sadap { $group }: { $years }. Lihat sekarang { $now }, terlalu dini { $early }, tanpa lilit { $unknown }
ready-year = { $year } { $stands } ({ $land })
ready-no-year = belum ada tahun
ready-now = Lihat sebelum dibuka: { $people }
ready-now-none = Belum ada kebun yang hampir siap dibuka.
ready-person = { $name } { $block } { $pct }% dari { $of } pohon ({ $low }-{ $high }%)
map-all = Blok: { $groups }
map-list = Peta { $group }: { $blocks } blok. Tanpa titik { $point }, tanpa luas { $area }, di atas { $limit } perlu batas { $large }
map-point = tanpa titik { $count }
rain-all = Hujan 10 hari: { $groups }
rain-line-open = { $group } basah { $soaked } dari { $reporters }: tampak siap
rain-line-hold = { $group } basah { $soaked } dari { $reporters }: tunggu
rain-line-few = { $group } baru { $reporters } kabar
best = Hidup: { $alive }. Kosong terbanyak: { $gaps }. Paling diam: { $quiet }
cost = Pesan bulan ini, seluruh layanan: { $parts } bagian{ $money }{ $share }. Ponsel gagal: { $failing }
cost-money = , biaya { $cost }
week = Pekan Anda: kunjungan { $made }, perlu dikunjungi { $left }, pesan menunggu { $waiting }{ $deadline }
week-owed = Pekan Anda: kunjungan { $made }, perlu dikunjungi { $left }, pesan menunggu { $waiting }{ $deadline }. Janji: { $promises }
week-order = . Pesan bibit sebelum { $day }
last-list = { $name }: { $facts }
last-fact = { $day } { $source }{ $block } { $what }
last-none = Belum ada kabar tentang { $name }.
labour = { $name }, { $days } hari berikut: { $jobs }. Lama kerja tidak tercatat.
labour-job = { $task } { $block } { $day }
labour-none = { $name } tidak ada tugas dalam { $days } hari.
whose = Akhir { $digits }: { $people }. { $last }
whose-person = { $name } ({ $group }), setuju { $consent }{ $other }
whose-other = , juga { $digits }
whose-last = Pesan terakhir { $day }
whose-never = Belum ada pesan
whose-none = Tidak ada petani Anda dengan nomor berakhir { $digits }.
paid-none = Uang tidak dicatat di sini: tanya bendahara kelompok.
grant-none = Hibah tidak dicatat di sini: tanya kantor. Pohon mati, peta dan kunjungan ada.
train-none = Pelatihan tidak dicatat di sini. Kemajuan kerja: kirim namanya dan kelompok.
