# Vietnamese. From memory; needs a native reader who knows rubber.
# One file for two forms. As written, with marks, a text is sent while it fits the 70 letters of a
# 16-bit SMS; when not, and always to phones that type without marks, all marks are taken off and
# 160 letters fit. So each text must be plain enough to be read without marks.
# Every text fits one SMS at its longest values in the bare form; a test says so.
# "Dừng" (stop), "đúng" (right), "đừng" (do not) and "dùng" (use) are one word without marks: STOP
# ends the texts, and what must not be done is said with "không".
# People are called by their name alone, so that no "anh" or "chị" can be wrong.
# Vietnamese has no plurals of counted things (CLDR).

## Numbers and languages

decimal = ,
years-ahead = 0
language-name = Tieng Viet
language-called = tiếng việt, viet, việt nam, vietnam, vietnamese, vietnamien, vietnamita, เวียดนาม, ภาษาเวียดนาม
languages = Ngôn ngữ: { $languages }. Nhắn NGÔN NGỮ và mã, như NGÔN NGỮ vi
language-set = Từ nay tôi nhắn bằng tiếng Việt.

## Days

weekday-1 = T2
weekday-2 = T3
weekday-3 = T4
weekday-4 = T5
weekday-5 = T6
weekday-6 = T7
weekday-7 = CN
month-1 = 1
month-2 = 2
month-3 = 3
month-4 = 4
month-5 = 5
month-6 = 6
month-7 = 7
month-8 = 8
month-9 = 9
month-10 = 10
month-11 = 11
month-12 = 12
day = { $weekday } { $day }/{ $month }
day-year = { $day }/{ $month }/{ $year }
month-year = { $month }/{ $year }
span = { $from } đến { $to }

## What was stored, read back

read-back = { $block }: { $facts }. { $stand }Sai? Nhắn KHÔNG
read-back-rain = { $facts }. Cám ơn. Sai? Nhắn KHÔNG
clause-on = { $clause } { $day }
said-part = { $clause } (một phần)
said-cleared = đã dọn đất
said-lined = đã cắm cọc
said-lined-count = { $count } cọc
said-holes-dug = đã đào { $count } hố
said-received-plants = đã nhận { $count } cây giống
said-received-plants-uncounted = đã nhận cây giống
said-received-fertiliser = đã nhận phân{ $amount }
said-received = đã nhận hàng
said-planted = đã trồng { $count } cây
said-dead = thêm { $count } cây chết
said-dead-none = không cây nào chết
said-replaced = đã trồng dặm { $count } cây
said-weeded = đã làm cỏ
said-fertilised = đã bón phân{ $amount }
said-sprayed = đã phun
said-pruned = đã tỉa chồi
said-branched = { $count } cây ra cành
said-branched-uncounted = cây ra cành
said-not-branched = { $count } cây chưa ra cành
said-not-branched-uncounted = cây chưa ra cành
said-branch-induction = tạo tán { $count } cây
said-branch-induction-uncounted = đã tạo tán
said-girth = vanh { $number } cây, trung bình { $mean } cm
said-girth-share = vanh: { $count } trên { $of } đủ lớn
said-height = chiều cao { $number } cây, trung bình { $mean } cm
said-disease = có { $ailment }
said-disease-count = { $ailment } ở { $count } cây
said-disease-none = không cây nào bệnh
said-damage = thiệt hại do { $cause }
said-damage-count = { $count } cây thiệt hại do { $cause }
said-damage-none = không thiệt hại
said-cover-sown = đã gieo cây phủ đất
said-intercrop-sown = trồng xen { $species }
said-intercrop-sown-unnamed = đã trồng xen
said-intercrop-none = không trồng xen
said-tapping-opened = đã mở cạo { $count } cây
said-not-done = chưa làm: { $job }
said-not-done-unnamed = chưa làm
said-rain-soaked = mưa ướt đẫm đất
said-rain-none = không mưa
said-rain-mm = mưa { $mm } mm
amount = , { $value } { $unit }

## How the block stands after it

stand-planted = Tất cả { $total }. { "" }
stand-room = Tất cả { $total }, còn chỗ cho { $room }. { "" }
living = { $first }/{ $planted }
living-filled = { $first } + { $filled }/{ $planted }
stand-dead = Chết { $dead }, sống { $living }. { "" }
stand-alive = Sống { $living }. { "" }
stand-filled = Sống { $living }, còn trống { $gaps }. { "" }
stand-next = Làm tiếp khoảng { $day }. { "" }
stand-ready = Có thể cạo mủ từ { $earliest } đến { $latest }. { "" }
stand-meets = Vanh đã đạt. { $adviser } xem trước khi mở. { "" }
stand-close = Gần đạt: đo hết các cây trước khi mở. { "" }
stand-early = Chưa thể nói khi nào cạo. { "" }
stand-look = Xem chồi mới từ { $day }. { "" }
stand-sick = Đã báo { $adviser }. Để nguyên cây, không phun. { "" }
stand-harm = Đã báo { $adviser }. Tránh xa cành gãy treo trên cây. { "" }
stand-sick-untold = Để nguyên cây, không phun. { "" }
stand-told = Đã báo { $adviser }. { "" }
stand-harm-untold = Tránh xa cành gãy treo trên cây. { "" }
stand-label = Làm theo nhãn. Rửa tay. { "" }

unit-ha = ha
unit-acre = mẫu Anh
unit-rai = rai
unit-m2 = m2
unit-kg = kg
unit-g = g
unit-bag = bao
unit-tin = lon/xô
unit-cup = nắm/chén
unit-l = l
unit-m = m
unit-cm = cm
unit-mm = mm
unit-inch = inch
unit-foot = foot
land = { $hectares } ha

ailment-white_root = rễ trắng
ailment-leaf_fall = rụng lá
ailment-pink = nấm hồng
ailment-leaf_spot = đốm lá
ailment-mildew = phấn trắng
ailment-dieback = khô ngọn
ailment-termites = con mối
ailment-other = bệnh

cause-wind = gió
cause-fire = bị cháy
cause-flood = ngập
cause-drought = khô hạn
cause-animals = thú, trâu bò
cause-theft = trộm
cause-termites = mối
cause-other = nguyên nhân khác

## Correcting

changed = Đã sửa ở { $block }: { $facts }. { $stand }Sai? Nhắn KHÔNG
moved = Chuyển từ { $old } sang { $block }: { $facts }. { $stand }Sai? Nhắn KHÔNG
block-facts = { $block }: { $facts }
person-facts = { $name } { $block }: { $facts }
confirm-many = { $people }? Nhắn 1 có, 2 không
many-told = Đã ghi: { $people }. Sai? Nhắn KHÔNG
leader-told = { $name }, { $leader } báo thay bạn { $facts }. Sai? Nhắn KHÔNG trong 7 ngày. -{ $adviser }
leader-took-back = { $name }, { $leader } đã rút lại tin báo thay bạn { $facts }. -{ $adviser }
contested-notice = { $name } ({ $group }) nói không đúng, { $leader } đã báo { $facts }. Đã để riêng.
fixed-notice = { $adviser } đã sửa { $block }: { $facts }. Sai? Nhắn GỌI TÔI
taken-back = Đã bỏ: { $facts } ở { $block }. { $stand }
taken-back-ask = Đã bỏ: { $facts } ở { $block }. Sửa lại thế nào? Nhắn lại, như { $example }
taken-back-count = Đã bỏ: { $facts } ở { $block }. Số đúng là mấy?
nothing-to-undo = Không có gì để bỏ. Muốn báo thì nhắn việc và số, như { $example }
unsure-change = Chỗ nào sai? Nhắn như: { $example }

## Asking before storing

confirm = { $block }: { $facts }? { $why }Nhắn 1 có, 2 không
confirm-for = { $name } { $block }: { $facts }? { $why }Nhắn 1 có, 2 không
why-area = Đất chỉ đủ chỗ cho { $holds }. { "" }
why-alive = Chỉ còn { $alive } cây sống. { "" }
why-gaps = Chỉ biết { $gaps } chỗ trống. { "" }
why-large = Vậy là nhiều so với { $alive }. { "" }
why-again = Đã báo { $count } rồi. { "" }
why-odd = { $value } cm khác thường. { "" }
why-shrunk = Lần trước trung bình { $before } cm. { "" }
why-inches = Là cm, không phải inch? { "" }
why-heaped = Đều tận cùng 0 hoặc 5: xin xem kỹ. { "" }
why-sum = Có cành và chưa có cành cộng lại { $told }, sống { $alive }. { "" }
why-thin = Trung bình { $mean } cm, còn nhỏ, chưa cạo được. { "" }
why-feed = Vậy hơn 1 kg mỗi cây. { "" }
why-before = Ngày đó trước khi trồng. { "" }
why-not-planted = Ở đó chưa trồng gì. { "" }
why-word = Tôi đọc "{ $from }" là "{ $to }". { "" }
why-none = { "" }
ask-block = Lô nào: { $blocks }? Nhắn tên lô.
ask-block-unknown = Tôi chưa biết lô { $unknown }. Là lô nào: { $blocks }?
no-blocks = Đất của { $name } chưa có trong sổ. { $adviser } sẽ ghi vào. Không mất gì cả.
ask-count = Bao nhiêu { $facts } ở { $block }? Nhắn số.
ask-count-range = { $low } hay { $high } { $facts } ở { $block }? Nhắn một số.
ask-values = Vanh bao nhiêu cm ở { $block }? Nhắn các số, như 41 43 39
ask-values-height = Cao bao nhiêu cm ở { $block }? Nhắn các số, như 210 240
ask-date = Ngày nào? Nhắn như 12/5 hoặc 3 ngày trước.
ask-for-whom = Cho ai? { $people }. Nhắn số.
dropped = Không ghi. Nhắn lại lúc nào cũng được, như { $example }
bare-planted = cây đã trồng
bare-dead = cây chết
bare-replaced = cây dặm
bare-holes_dug = hố đã đào
bare-tapping_opened = cây mở cạo
bare-disease = cây bệnh
bare-branched = cây ra cành
bare-not_branched = cây
bare-other = cây

## Not understood, help, leaving

unclear = Xin lỗi, tôi chưa hiểu. Nhắn tên việc, số cây và lô, như { $example }
stranger = Tôi không biết số này. Xin cán bộ ghi vào danh sách.
help = Nhắn việc đã làm: { $example }, làm cỏ B, bón phân B. Hỏi: LÀM GÌ TIẾP, GỌI TÔI, NGÔN NGỮ. Báo sai: KHÔNG. Không nhận tin nữa: STOP. -{ $adviser }
help-adviser = Theo nhóm: TÌNH HÌNH, CHẬM, CHẾT, THIẾU, BỆNH, RỄ, GIÓ, MƯA, GIỐNG; IM LẶNG, THĂM, HÀNG CHỜ. XEM THÊM. Thôi: STOP
help-adviser-more = Theo tên: VANH, LỊCH SỬ, TẠM NGỪNG. TIẾP, XONG. Nhóm: VỤ TRỒNG, HOÃN VỤ TRỒNG, CẢNH BÁO. XEM THÊM
help-adviser-deeds = NHẮN, nhóm và lời; BÀN GIAO và tên; gọi Keti; XONG HỨA. Sau TIẾP: số, CHUYỂN và tên
help-clerk = { $group }: TÌNH HÌNH, CHẬM, IM LẶNG, CHẾT, THIẾU. Tin chờ: HÀNG CHỜ, TIẾP, XONG. Thôi: STOP
help-viewer = { $group }: TÌNH HÌNH, CHẾT, THIẾU, BỆNH, GIỐNG, MƯA. XEM THÊM. Thôi: STOP
not-yours = { $name }, việc này { $adviser } làm được. Bạn làm được gì: nhắn GIÚP
example = chết 8 { $block }
stopped = Xong. Không nhắc số này nữa. Dữ liệu vẫn giữ. BẮT ĐẦU để trở lại, XÓA DỮ LIỆU để bỏ tên.
started = Chào { $name }. Sẽ có tin nhắc việc cho các lô, khoảng mỗi tuần một tin. Không muốn nhận nữa thì nhắn STOP, lúc nào cũng được. -{ $adviser }
welcome = Chào { $name }, đây là Budwood: tin nhắn nhắc việc vườn cao su, khoảng mỗi tuần một tin. Cứ trả lời tự nhiên. Đổi tiếng: NGÔN NGỮ. Không nhận nữa: STOP. -{ $adviser }
same-again = Việc này đã ghi rồi, cám ơn.

## Farmers ask

now = { $name }, nay làm: { $tasks }. Xong thì nhắn. -{ $adviser }
now-nothing = { $name }, nay chưa có việc. Sau đó: { $task } { $block } khoảng { $day }. -{ $adviser }
now-none = { $name }, chưa có việc và chưa có ngày. Nhắn việc đã làm, như { $example }. -{ $adviser }
my-blocks = { $blocks }
my-block = { $block }: sống { $living }, trồng { $day }
my-block-empty = { $block }: chưa trồng
when-task = { $task } ở { $block }: khoảng { $day }. -{ $adviser }
when-tap = { $name }, { $block } có thể cạo mủ khoảng { $likely }, từ { $earliest } đến { $latest }. Tính theo { $trees } cây; lần đo sau sẽ rõ hơn. -{ $adviser }
when-tap-unknown = { $name }, chưa có số vanh của { $block } nên chưa nói được. Khi được hỏi, xin đo. Không cạo mủ trước khi { $adviser } xem.
when-tap-early = { $name }, còn sớm để nói khi nào cạo { $block }: { $trees } cây chưa đủ. Khi được hỏi, xin đo. Không cạo mủ trước khi { $adviser } xem.
how-many-plants = { $area } cần khoảng { $points } cây; đặt { $order } để bù hao. Số cọc mới là số đúng. -{ $adviser }
how-much-feed = { $block }: { $dose }. Làm cỏ trước, đất ẩm, bón vòng { $ring }. -{ $adviser }
feed-sum = { $trees } x { $grams } g = { $kilograms } kg
feed-doses = { $trees } cây, mỗi cây { $products }: { $kilograms }
feed-brief = { $trees } x { $products } g = { $kilograms } kg
feed-grams = { $product } { $grams } g
feed-weight = { $kilograms } kg
feed-ring = dưới mép tán lá, cách gốc tối đa 1 m
how-much-unknown = Nhắn diện tích, như: bao nhiêu cây cho 1,2 ha. Hoặc hỏi { $adviser }: GỌI TÔI
may-tap-no = Chưa được, { $name }: { $block } mở cạo khi vanh { $girth } cm ở { $share }% số cây. Cây nhỏ bị cạo mủ sẽ nhỏ mãi. -{ $adviser }
may-tap-no-usual = Chưa được, { $name }: { $block } thường mở khi vanh gần { $girth } cm ở { $share }% số cây, { $adviser } quyết định. Cây nhỏ bị cạo mủ sẽ nhỏ mãi.
may-tap-check = { $block } gần được, { $name }. { $adviser } đo trước khi mở. Chưa được cạo mủ.
may-plant-wait = { $name }, xin chờ. Chưa có tin trồng cho { $group }. Để cây giống trong bóng râm và ẩm. -{ $adviser }
may-plant-yes = Được, { $name }: tin trồng đã có { $day }. Trồng khi đất ẩm, trong 3 ngày sau khi nhận cây. -{ $adviser }
may-fill-yes = Được: trồng dặm { $block } chậm nhất { $day } khi đất ẩm, cùng giống, cây khỏe. -{ $adviser }
may-fill-wait = Chưa nên: mưa còn ít cho cây mới ở { $block }. Lại từ { $day }. -{ $adviser }
may-fill-late = Không nên ở { $block }: sau { $months } tháng cây mới bị che và nhỏ mãi. Hỏi { $adviser } trước.
may-spray = Không chỉ cách phun qua tin nhắn. Làm theo nhãn và luật địa phương, hỏi người đã tập huấn. Che kín người, lúc lặng gió, xa vỏ cây và nguồn nước. Nhắn GỌI TÔI
may-other = Nên hỏi { $adviser } trước. Nhắn GỌI TÔI sẽ có người gọi.
may-yes = Được, { $name }: { $task } ở { $block } đã đến lúc, chậm nhất { $day }. -{ $adviser }
who = Đây là số nhắn tin cao su của { $adviser }. Không bao giờ hỏi tiền hay mã PIN. STOP để thôi, GIÚP để xem cách nhắn.
my-data = Chúng tôi giữ: tên, số này, nhóm { $group }, { $blocks }, tin đã báo. Đồng ý nhắn: { $consent }, người mua: { $sharing }. Sai? Nhắn GỌI TÔI
consent-none = chưa có
share-given = Đã ghi, { $name }: người mua được biết tên và chỗ vườn. Rút lại: CHIA SẺ KHÔNG. -{ $adviser }
share-refused = Đã ghi, { $name }: không cho người mua biết gì về bạn. Đổi lại: CHIA SẺ CÓ. -{ $adviser }
share-ask = { $name }, cho người mua biết tên và chỗ vườn không? Nay: { $sharing }. Nhắn CHIA SẺ CÓ hay CHIA SẺ KHÔNG. -{ $adviser }
sharing-yes = có
sharing-no = không
call-me = { $name }, { $adviser } sẽ gọi. Nếu có ai gặp nguy hiểm, hãy đến chỗ an toàn trước.
call-me-untold = { $name }, giờ chưa báo được ai: hãy tự gọi. Nếu có ai gặp nguy hiểm, hãy đến chỗ an toàn trước.
call-me-notice = Gọi cho { $name } ({ $group }), số cuối { $digits }: nhắn { $day }.
alarm-notice = Xin gọi { $name } ({ $group }) sớm, số cuối { $digits }: tin { $day } có thể nói về { $alarm }.
alarm-grief = việc tang
alarm-danger = nguy hiểm
alarm-illness = đau ốm
alarm-complaint = phàn nàn
alarm-money = tiền
alarm-fire = cháy
alarm-snake = rắn cắn
alarm-number = số mới hoặc mất điện thoại
matter-notice = { $name } ({ $group }), số cuối { $digits }, nhắn { $day }: { $alarm }. Đọc tin: nhắn TIẾP
concern-call-me = xin gọi lại
concern-question = câu hỏi
concern-unclear = không hiểu
first-fire = Đưa mọi người ra xa lửa và khói ngay. Kêu người giúp. Đừng chữa cháy một mình. { $told }
first-snake = Nằm yên, đến trạm y tế ngay. Đừng rạch, hút hay buộc chặt vết cắn. { $told }
first-danger = Đến chỗ an toàn trước, gọi người gần đó. { $told }
first-illness = Nếu nặng, đến trạm y tế ngay. Chảy máu thì ép vải sạch. { $told }
told-adviser = Đã báo { $adviser }.
told-nobody = Chưa báo được ai: gọi người gần đó giúp.
grief = { $name }, xin chia buồn. { $told } Không nhắc việc nữa cho đến khi { $adviser } đồng ý.
told = Cảm ơn { $name }. Đã báo { $adviser }, người sẽ đọc tin này.
not-told = { $name }, tôi không trả lời được và chưa báo được { $adviser }. Xin hỏi trực tiếp.
only-done = Chỉ ghi việc anh chị đã làm. Làm xong hãy nhắn, như { $example }
sick-notice = { $name } { $block } ({ $group }): { $facts }.
cluster-notice = { $group }: { $ailment } ở { $count } nơi từ { $day }. Hãy xem. Sau đó CẢNH BÁO { $group } để hàng xóm xem. Chưa phun thuốc.
warn-ask = { $group }: { $ailment } ở { $count } nơi. Nếu đã xem, sẽ nhắn { $blocks } lô gần đó cùng xem. Nhắn ĐÚNG { $code }
warn-done = Sẽ nhắn { $blocks } lô gần { $group } xem { $ailment }.
warn-none = Chưa có ổ bệnh ở { $group }, hoặc không có cây gần đó. Danh sách: BỆNH { $group }
girth-notice = { $name } { $block } ({ $group }): vanh chậm khoảng { $months } tháng so với bình thường. Nên xem.
open-notice = { $name } { $block } ({ $group }): đo { $trees } cây, { $share }% đủ vanh để cạo. Nên xem trước. Rồi nhắn cho { $name }: mở cạo và số cây.
no-answer = Tôi không trả lời được. { $adviser } giúp được: GỌI TÔI. Việc tới: nhắn LÀM GÌ TIẾP
later = Được, { $name }: { $task } ở { $block } nhắc lại khoảng { $day }. -{ $adviser }
nothing-open = Không có câu nào chờ trả lời. Việc tới: nhắn LÀM GÌ TIẾP
done = Cám ơn { $name }. Đã ghi xong { $day }: { $task } ở { $block }. Sai? Nhắn KHÔNG
erase-ask = Tên, số và tin nhắn sẽ bị xóa vĩnh viễn. Muốn xóa thì nhắn ĐÚNG { $code }
erased = Xong. Đã xóa tên, số và tin nhắn. Số liệu của lô vẫn giữ, không có tên. Bản sao cũ còn giữ cho đến khi bị bỏ đi.
nothing-held = Số này không còn tên nào. Không còn gì để xóa.
code-wrong = Mã không đúng. Chưa làm gì cả.
code-locked = Mã sai hoặc quá nhiều. Khóa một ngày. Không phải bạn? Báo văn phòng ngay.
visit-ask = Để ghi cho { $name } đến tối nhắn ĐÚNG { $code }. Không phải bạn? Đừng trả lời.
stop-ask = Không nhận tin nữa, cả khi có nguy hiểm? Nhắn ĐÚNG { $code }
held-back = Nhiều tin quá. Lát nữa trả lời. Có nguy hiểm thì gọi ngay.
digest = Thêm { $count } tin trong giờ này. Hãy hỏi: { $people }

## Jobs in one or two words

job-order_plants = đặt cây giống
job-dig_pits = đào hố
job-plant = trồng
job-survival_check = đếm cây chết
job-backfill = trồng dặm
job-weed = làm cỏ
job-feed = bón phân
job-prune = tỉa chồi
job-induce_branching = tạo tán
job-look_at_induced = xem chồi
job-root_check = xem rễ
job-girth_census = đo vanh
job-clear = dọn đất
job-line = cắm cọc
job-mulch = phủ gốc
job-firebreak = đường cản lửa
job-count_tall = đếm cây cao
job-get_ready = chuẩn bị
job-open = mở cạo
job-fill_pits = lấp hố
job-sow_cover = gieo cây phủ
job-leaf_check = xem lá
job-intercrop = trồng xen
job-open_rest = mở cây còn lại
job-rain_watch = báo mưa
job-hand_over = bàn giao
walk-every = cứ { $every } cây đo 1 từ cây { $from }
walk-all = mọi hàng
pit-edge = { $cm } cm
pit-round = tròn, rộng { $wide } cm, sâu { $deep }
datum-ground = cách đất { $cm } cm
datum-union = cách mắt ghép { $cm } cm
usual = khoảng { $value }
kind-cleared = dọn đất
kind-lined = cắm cọc
kind-holes_dug = đào hố
kind-received = nhận hàng
kind-planted = trồng
kind-dead = đếm
kind-replaced = trồng dặm
kind-weeded = làm cỏ
kind-fertilised = bón phân
kind-sprayed = phun
kind-pruned = tỉa chồi
kind-branched = ra cành
kind-not_branched = ra cành
kind-branch_induction = tạo tán
kind-girth = đo
kind-height = đo
kind-disease = kiểm tra
kind-damage = kiểm tra
kind-cover_sown = gieo
kind-intercrop_sown = gieo
kind-tapping_opened = mở cạo
kind-not_done = việc
kind-rain = mưa

## Nudges. One job, a date, one reply word.

nudge-order_plants = Nhờ { $name } đặt { $trees } cây ghép cho { $block } chậm nhất { $by }. Hỏi cây có chứng nhận. Đặt rồi nhắn XONG. -{ $adviser }
nudge-dig_pits = Nhờ { $name } đào hố { $block } chậm nhất { $by }: { $trees } hố, { $pit }. Đánh dấu hố, giữ trẻ em tránh xa. Nhắn HỐ và số. -{ $adviser }
nudge-plant = Nhờ { $name } trồng { $block } chậm nhất { $by } khi đất ẩm: { $trees } cây. Xé bỏ túi bầu, giữ bầu đất, nén chặt. Nhắn TRỒNG và số. -{ $adviser }
nudge-survival_check = Nhờ { $name } đi từng hàng { $block } chậm nhất { $by }. Trong { $trees } cây, mấy cây chết? Nhắn CHẾT và số, 0 cũng được. -{ $adviser }
nudge-backfill = { $name }, { $block } có { $trees } chỗ trống. Trồng dặm chậm nhất { $by } khi đất ẩm, cùng giống. Nhắn TRỒNG DẶM và số. -{ $adviser }
nudge-weed = Nhờ { $name } làm cỏ các hàng { $block } chậm nhất { $by }. Gần gốc thì nhổ tay, giữ lưỡi dao xa vỏ cây và người. Nhắn LÀM CỎ. -{ $adviser }
nudge-feed = Nhờ { $name } bón { $block } chậm nhất { $by }: { $dose }. Làm cỏ trước, đất ẩm, xa gốc. Đeo găng tay. Nhắn BÓN PHÂN. -{ $adviser }
nudge-prune = Nhờ { $name } tỉa chồi dưới { $height } m ở { $block } chậm nhất { $by }, khi còn nhỏ. Đứng dưới đất, không trèo. Nhắn TỈA CHỒI. -{ $adviser }
nudge-induce_branching = { $name }, { $block } có { $trees } cây cao chưa ra cành. Chỉ làm theo cách đã được chỉ, chậm nhất { $by }. Không trèo. Nhắn TẠO TÁN và số. -{ $adviser }
nudge-look_at_induced = Nhờ { $name } xem cây đã tạo tán ở { $block } chậm nhất { $by }. Có chồi thì tháo dây, kẻo ngọn chết. Nhắn RA CÀNH và số. -{ $adviser }
nudge-root_check = Nhờ { $name } xem gốc cây ở { $block } chậm nhất { $by }. Có sợi trắng không? Nhắn RỄ TRẮNG và số, 0 cũng được. Để nguyên cây, không nhổ. -{ $adviser }
nudge-girth_census = Nhờ { $name } đo vanh { $datum } ở { $block } chậm nhất { $by }: { $trees } cây, { $walk }, cả cây nhỏ. Nhắn VANH và các số. -{ $adviser }
nudge-clear = { $name }, cây giống { $block } chắc có chưa? Có rồi mới hạ cây, dọn chậm nhất { $by }: thợ có nghề, người khác xa 2 lần chiều cao cây, không đốt. Nhắn XONG. -{ $adviser }
nudge-line = Nhờ { $name } cắm cọc { $block } chậm nhất { $by }, hàng cân bằng, có dốc thì ngang dốc: khoảng { $trees } cọc. Xong nhắn XONG. -{ $adviser }
nudge-mulch = { $name }, sắp khô hạn. Phủ cỏ khô quanh gốc { $block } chậm nhất { $by }, cách thân 20 cm, che cây yếu. Nhắn XONG. -{ $adviser }
nudge-firebreak = Nhờ { $name } làm đường cản lửa { $width } m quanh { $block } chậm nhất { $by }. Cắt cỏ, không đốt, lưỡi dao xa người. Nhắn XONG. -{ $adviser }
nudge-count_tall = Nhờ { $name } đếm ở { $block } chậm nhất { $by } cây cao hơn { $height } m không có cành. Nhắn CHƯA PHÂN CÀNH và số, 0 cũng được. -{ $adviser }
nudge-get_ready = { $name }, { $block } có thể mở cạo trong một năm tới. Hỏi { $adviser } lớp học cạo chậm nhất { $by }. Chưa mua gì, chưa cạo mủ. Nhắn XONG.
nudge-open = { $name }, { $block } đã đủ: { $share }% cây có vanh { $girth } cm. { $adviser } xem trước khi mở, hạn { $by }. Không mở cây chưa đánh dấu.
nudge-open-usual = { $name }, { $block }: { $share }% cây có vanh { $girth } cm. { $adviser } xem trước khi mở, hạn { $by }. Không mở cây chưa đánh dấu.
nudge-fill_pits = Nhờ { $name } lấp hố { $block } chậm nhất { $by }: đất mặt trước, cắm cọc giữa. Giữ trẻ em tránh xa. Nhắn XONG. -{ $adviser }
nudge-sow_cover = Nhờ { $name } gieo cây phủ đất giữa các hàng { $block } chậm nhất { $by } khi đất ẩm, xa gốc. Nhắn XONG. -{ $adviser }
nudge-leaf_check = Nhờ { $name } xem lá { $block } chậm nhất { $by }. Nhắn ĐỐM LÁ hoặc RỤNG LÁ và số, lá tốt nhắn XONG. Không phun. -{ $adviser }
field-round = { $name } đi vòng { $block } chậm nhất { $by }: { $jobs }. Dao xa người, không trèo, không nhổ, không phun. Nhắn XONG hoặc điều thấy. -{ $adviser }
round-done = Cám ơn { $name }. Đã ghi đi vòng { $block } xong { $day }, không có bệnh. Sai? Nhắn KHÔNG
walk-then = { ", " }
walk-weeds = cỏ
walk-shoots = chồi
walk-roots = rễ
walk-leaves = lá
walk-crops = cây xen
nudge-near = { $name }, có { $ailment } gần đây. Xem { $block } chậm nhất { $by }. Nhắn { $ailment } và số, không có nhắn 0. Để nguyên cây, không phun. -{ $adviser }
nudge-intercrop = { $name }, { $block } có trồng xen? Cách cây { $distance } m. Chậm nhất { $by } nhắn TRỒNG XEN và tên, không có nhắn XONG. -{ $adviser }
nudge-open_rest = { $name }, { $block } còn { $trees } cây nhỏ. Đo { $datum } chậm nhất { $by }. { $adviser } xem trước khi mở. Nhắn VANH và các số.
nudge-rain_watch = { $name }, từ { $since } mưa đã ướt đẫm đất { $block } chưa? Nhắn MƯA ĐẪM hoặc KHÔNG MƯA, để biết lúc trồng. -{ $adviser }
nudge-hand_over = Chúc mừng { $name }. { $block } nay đã vào cạo, không nhắc việc nữa. Dữ liệu vẫn giữ. Cần giúp nhắn GỌI TÔI. -{ $adviser }

## The adviser asks

waiting-list = Đang chờ { $count }, lâu nhất { $hours } giờ: { $people }. Đọc tin: nhắn TIẾP
waiting-none = Không có tin nào chờ.
waiting-person = { $name } { $hours } giờ
waiting-next = { $name } ({ $group }) { $digits }, { $hours } giờ, { $concern }. Đã lo? XONG: { $text }
waiting-next-store = { $name } ({ $group }) { $digits }, { $hours } giờ. Ghi { $block }: { $facts }? Nhắn 1. XONG: { $text }
waiting-next-choose = { $name } ({ $group }) { $digits }, { $hours } giờ. Ghi { $readings }? Nhắn số. XONG: { $text }
waiting-reading = { $number } { $block } { $facts }
waiting-next-number = { $name } ({ $group }) { $digits }, { $hours } giờ. Mất? MẤT MÁY { $name }. Số mới? CHUYỂN SỐ { $name } và số. XONG: { $text }
waiting-closed = Đã xong: { $name }. Còn chờ: { $count }.
waiting-old = { $count } tin chờ hơn { $hours } giờ, một tin của { $name } ({ $group }). Đọc tin: nhắn TIẾP
held = Không nhắc { $name } cho đến khi anh chị nhắn NHẮC LẠI { $name }
held-until = Không nhắc { $name } đến { $day }. Nhắc lại sớm hơn: NHẮC LẠI { $name }
gone-on = { $name } được nhắc lại.
not-held = { $name } vẫn được nhắc.

## A text or a group goes to a colleague
pass-whom = Chuyển cho ai? Có thể nhận: { $people }
pass-nobody = Không còn ai trong danh sách nhận được.
pass-none = Chưa đọc tin nào. Đọc tin: nhắn TIẾP
passed = Đã chuyển cho { $adviser }: tin của { $name }. Còn chờ: { $count }
passed-notice = { $adviser } chuyển cho bạn tin của { $name } ({ $group }). Đọc tin: nhắn TIẾP
hand-ask = Từ nay { $name } phụ trách { $groups }: { $farmers } người, { $waiting } tin chờ, { $owed } lời hứa, { $sick } bệnh? Nhắn ĐÚNG { $code }
handed = { $name } nay phụ trách { $groups } và đã biết: { $farmers } người, { $waiting } tin chờ, { $owed } lời hứa, { $sick } bệnh.
handed-notice = { $adviser } bàn giao { $groups } cho bạn: { $farmers } người, { $waiting } tin chờ, { $owed } lời hứa, { $sick } bệnh. Nhắn HÀNG CHỜ

## What an adviser owes to whom
promised = Đã ghi số { $number }, đến { $day }: { $text }. Xong nhắn XONG HỨA { $number }
promise-kept = Xong: { $text }. Còn hứa: { $count }
promise-none = Không có lời hứa nào như vậy.
promise-full = Còn { $count } lời hứa. Hãy xong bớt trước.
owed = { $number } { $text } ({ $day })
owed-call = gọi { $name } ({ $day })

## An adviser's own words to a group or a person
announce-ask = { $phones } máy, mỗi máy 1 tin{ $cost }, { $when }{ $left }. Gửi? Nhắn ĐÚNG { $code }. Tin: { $text }
announce-cost = , giá { $cost }
announce-now = ngay
announce-later = { $day } từ { $time }
announce-left = ; { $count } không (nghỉ, STOP)
announced = Đang gửi đến { $phones } máy, { $when }{ $left }.
announcement = { $text } -{ $adviser }
announce-nobody = Lúc này không ai của { $name } nhận tin được: nghỉ, STOP hoặc không máy. Chưa gửi gì.
announce-long = Dài hơn một tin { $count } chữ. Chưa gửi gì.
announce-empty = Nói gì? Viết NHẮN { $name } rồi lời nhắn.

## A phone is lost or found, a number is another one
phone-lost-ask = Máy của { $people } ({ $digits }) bị mất? Máy đó không nhận tin, không đổi gì. Nhắn ĐÚNG { $code }
phone-lost = Đã khóa máy của { $people } ({ $digits }). Tìm được: TÌM THẤY { $name }. Số mới: CHUYỂN SỐ { $name } và số.
phone-lost-adviser = Đã khóa máy của { $people } ({ $digits }). Số mới do văn phòng ghi.
phone-found-ask = Máy của { $people } ({ $digits }) đã về đúng chủ? Nhắn ĐÚNG { $code }
phone-found = Máy của { $people } ({ $digits }) dùng lại được.
phone-none = { $name } không có máy nào khác trong danh sách.
phone-is-lost = Máy này ghi là bị mất: không báo, không đổi gì. Tin được giữ lại. Không mất? Gặp cán bộ.
number-ask = Số của { $name } nay là { $number }? Số cũ ({ $digits }) hết quyền. Nhắn ĐÚNG { $code }
number-moved = Số của { $name } nay tận cùng { $digits }. Tin từ số cũ không tính nữa.
number-own = Số của anh chị đổi qua danh sách văn phòng, không qua tin nhắn.
number-unread = Không phải số di động trong nước. Chưa đổi. Nhắn CHUYỂN SỐ { $name } và cả số.
number-taken = Số tận cùng { $digits } là của người khác. Chưa đổi gì. Dùng chung? Báo văn phòng.
status = { $group } { $day }: { $farmers } hộ, { $planted } hộ đã trồng, cây sống { $alive }. { $due }{ $late }{ $check }Im lặng { $quiet }, bệnh { $sick }{ $peace }
status-due = Việc: { $tasks }. { "" }
status-due-none = Không có việc. { "" }
status-late = Chậm: { $tasks }. { "" }
status-late-none = Không chậm. { "" }
status-check = Cần xem để mở { $count }. { "" }
left-in-peace = . Tạm để yên { $count }
feed-lost = . Lỡ bón phân trong { $days } ngày: { $count }, xem { $name }
alive-pct = { $pct }%
alive-pct-visited = { $pct }% (thăm { $visited }%)
alive-unknown = chưa đếm
task-count = { $task } { $count }
more = +{ $count }
more-jobs = { $count } khác
more-none = Đã hết.
status-all = { $groups }
status-line = { $group } sống { $alive } chậm { $late } im lặng { $quiet } bệnh { $sick }
late-all = Chậm: { $groups }
gaps-all = Thiếu: { $groups }
sick-all = Bệnh: { $groups }
group-count = { $group } { $count }
group-first = { $group } { $count } ({ $first })
gaps-order = { $order ->
    [0] quá muộn để dặm
   *[other] đặt { $order }
  }
late-list = Chậm { $group }: { $people }{ $peace }{ $lost }
late-none = Không ai chậm ở { $group }{ $peace }{ $lost }.
late-person = { $name } { $task } { $days } ngày
late-person-told = { $name } { $task } { $days } ngày, nhắc 3 lần
quiet-list = Im lặng trên { $limit } ngày: { $people }{ $why }
quiet-none = Không ai im lặng quá { $limit } ngày{ $why }.
quiet-person = { $name } { $days }
quiet-person-never = { $name } chưa nhắn
gaps-list = Thiếu { $group }: { $gaps } cây ở { $farmers } hộ, { $order ->
    [0] quá muộn để dặm
   *[other] đặt { $order } kể cả hao
  }. { $people }
gaps-none = Không biết chỗ trống nào ở { $group }. { $uncounted } lô chưa đếm.
gaps-person = { $name } { $gaps }
sick-list = Bệnh { $group }: { $people }
sick-list-cluster = Bệnh { $group }: { $ailment } ở { $count } nơi từ { $day }, xem trước. { $people }
sick-none = Không ai báo bệnh ở { $group } trong { $limit } ngày.
sick-person = { $name } { $ailment } { $count }
visit-list = Cần thăm trước: { $people }{ $peace }
visit-none = Chưa ai cần thăm{ $peace }.
visit-cluster = { $name } { $ailment } ở { $count } nơi
visit-lost = { $name } chết { $pct }%
visit-quiet = { $name } im { $days } ngày
visit-ending = { $name } { $task } còn { $days } ngày
feed-group = Phân bón { $group }: { $farmers } hộ, { $trees } cây, { $kilograms } kg. Bao 50 kg: chung { $pooled }, riêng từng hộ { $alone }. { $people }
girth-list = Vanh { $group }: { $people }
girth-none = Ở { $group } chưa có số vanh nào.
feed-none = Ở { $group } chưa đến kỳ bón phân.
member = { $name } ({ $group }): { $blocks }. Tin cuối { $day }
member-told = { $name } ({ $group }): { $blocks }. Tin gần nhất { $day }, chưa nhắn tin
member-never = { $name } ({ $group }): { $blocks }. Chưa nhắn tin
member-block = { $block } sống { $living }, trồng { $day }{ $due }
member-block-empty = { $block } { $area }, chưa trồng{ $due }
member-due = , { $task } { $day }
member-girth = , vanh { $mean } cm ({ $of }), { $against }{ $ready }
member-behind = chậm { $months } tháng
member-ahead = sớm { $months } tháng
member-ready = , cạo { $earliest } đến { $latest }
member-no-blocks = chưa có lô
member-which = Người nào? { $people }
window-ask = Mở mùa trồng ở { $group } từ { $day }? { $rain }Sẽ báo { $farmers } hộ. Nhắn ĐÚNG { $code }
window-opened = Mùa trồng ở { $group } mở từ { $day }. Sẽ báo { $farmers } hộ.
rain-open = Mưa 10 ngày: { $soaked } trên { $reporters } hộ ướt, có vẻ được. { "" }
rain-hold = Mưa 10 ngày: { $soaked } trên { $reporters } hộ ướt, chờ. { "" }
rain-few = Mưa 10 ngày: mới { $reporters } hộ báo. { "" }
rain-begun-notice = { $group }: mưa ướt đất ở { $soaked } trên { $reporters } hộ từ { $day }. Có thể còn đợt khô hạn. Mở: VỤ TRỒNG { $group }
rain-stopped-notice = { $group }: không mưa ướt đất từ { $day }, có thể chưa vào mùa mưa. Chưa mở trồng, che và tưới cây bầu.
rain-stopped-notice-open = { $group }: không mưa ướt đất từ { $day }, có thể chưa vào mùa mưa. Muốn hoãn: HOÃN VỤ TRỒNG { $group }
hold-none = Mùa trồng ở { $group } chưa mở, không có gì để hoãn.
hold-ask = Hoãn mùa trồng ở { $group }? Không nhắc trồng nữa ({ $farmers } hộ) đến khi mở lại. Nhắn ĐÚNG { $code }
planting-held = Hoãn mùa trồng ở { $group } từ { $day }. Mở lại: VỤ TRỒNG { $group }
not-your-group = Nhóm hay nông dân nào? Các nhóm: { $groups }

## For the operator: how the service is

operator-well = Mọi việc đều ổn. { $state }
operator-trouble = Xin xem lại dịch vụ nhắn tin: { $troubles }. { $state }
operator-state = Tin đến gần nhất { $hours } giờ trước, { $waiting } tin chờ gửi. Tháng này { $parts } phần{ $share }.
operator-state-silent = Chưa có tin đến, { $waiting } tin chờ gửi. Tháng này { $parts } phần{ $share }.
operator-share = , { $pct }% ngân sách
operator-refused = { $gateway } không nhận tin
operator-down = { $gateway } mất kết nối
operator-says = xem SIM của { $gateway }
operator-silent = { $days } ngày không có tin đến qua { $gateway }
operator-machine = Máy có số cuối { $digits } nhắn như máy tự động nên được trả lời ít hơn. Xin hỏi máy của ai.
operator-oldest = có tin chờ gửi { $hours } giờ
operator-disk = đĩa sắp đầy
operator-spent = hết ngân sách tháng này
operator-budget = Hết { $pct }% ngân sách tháng này, { $parts } phần. { $stops }
operator-stops-none = Vẫn gửi mọi tin.
operator-stops-some = Không trả lời số lạ. Lời nhắc ngưng ở 90 và 95%, trả lời ngưng ở 100%.
operator-stops-all = Đến hết tháng chỉ gửi mã, tin STOP, sơ cứu và tin báo.

## The adviser asks more. A fact is known by a visit, a list, a leader, or an own text: a letter each.

source-visit = T
source-sheet = D
source-leader = H
source-text = N
untold = không rõ
quiet-failing = { $person } máy lỗi
quiet-resting = . Tạm nghỉ { $count }
quiet-idle = . Không việc { $count }
dead-all = Chết: { $groups }
dead-line = { $group } { $dead } trên { $planted }
dead-list = Chết { $group }: { $dead } trên { $planted } ({ $pct }%). { $people }{ $uncounted }
dead-person = { $name } { $pct }% { $source }
dead-uncounted = . Chưa đếm { $count }
dead-parts = Chết { $group }: { $dead } trên { $planted } ({ $pct }%). { $parts }
dead-part = { $what } { $count }
clone-all = Giống: { $groups }
clone-list = Giống { $group }: { $clones }
clone-none = Ở { $group } chưa trồng cây nào.
clone-share = { $clone } { $pct }% (chết { $dead } trên { $planted })
order-all = Đặt cây: { $groups }
order-list = Đặt cây { $group }: { $plants } cây, { $farmers } hộ, { $land }. Chắc { $firm }, dự định { $wished }{ $by }. { $parts }
order-none = Ở { $group } chưa ai có ngày trồng.
order-part = { $clone } { $plants } { $day }
order-by = , đặt trước { $day }
order-firm = chắc { $firm }
feed-all = Bao: { $groups }
feed-share = { $name } { $kilograms } kg
work-all = { $task }: { $groups }
work-line = { $group } xong { $done } cần { $due } chậm { $late }
work-round = { $group } { $task }: xong { $done }, cần { $due }, chậm { $late }. { $people }
root-all = Rễ: { $groups }
root-round = Rễ { $group }: đã xem { $done }, cần { $due }, chậm { $late }. { $found }
root-none = Không ai báo rễ trắng.
fire-all = Đường cản lửa: { $groups }
fire-round = Đường cản lửa { $group }: xong { $done }, cần { $due }, chậm { $late }. Cháy: { $found }
fire-none = không ai báo
wind-all = Cây hại do gió: { $groups }
wind-list = Gió { $group }, { $days } ngày: { $farmers } trên { $of } hộ báo, { $trees } cây. { $people }
wind-none = Ở { $group } không ai báo gió trong { $days } ngày.
girth-all = Lô đã đo: { $groups }
girth-one = { $name } { $block } { $day } { $source }: { $trees } cây, trung bình { $mean } cm, lệch { $spread }%, nhỏ nhất { $smallest }. { $against }
girth-share = { $name } { $block } { $day } { $source }: { $count } trên { $of } cây đủ vanh
girth-unknown = Chưa có số vanh của { $name }.
ready-one = { $name } { $block }: cạo khoảng { $likely }, từ { $earliest } đến { $latest }, theo { $trees } cây
ready-close = { $name } { $block }: gần được, đo và xem trước khi mở
ready-early = { $name } { $block }: còn sớm, mới { $trees } cây
ready-unknown = { $name } { $block }: chưa có vanh
ready-opened = { $name } { $block }: đang cạo
ready-group = Cạo { $group }: { $years }. Xem ngay { $now }, còn sớm { $early }, chưa đo { $unknown }
ready-year = { $year } { $stands } ({ $land })
ready-no-year = chưa rõ năm
ready-now = Xem trước khi mở: { $people }
ready-now-none = Chưa lô nào gần mở cạo.
ready-person = { $name } { $block } { $pct }% của { $of } cây ({ $low }-{ $high }%)
map-all = Lô: { $groups }
map-list = Bản đồ { $group }: { $blocks } lô. Chưa có điểm { $point }, chưa có diện tích { $area }, trên { $limit } cần ranh { $large }. Người mua: có { $shared }, không { $kept }
map-point = chưa có điểm { $count }
rain-all = Mưa 10 ngày: { $groups }
rain-line-open = { $group } { $soaked } trên { $reporters } ướt: có vẻ được
rain-line-hold = { $group } { $soaked } trên { $reporters } ướt: chờ
rain-line-few = { $group } mới { $reporters } hộ báo
best = Sống: { $alive }. Thiếu nhất: { $gaps }. Im nhất: { $quiet }
cost = Tin tháng này, toàn hệ thống: { $parts } phần{ $money }{ $share }. Máy lỗi: { $failing }
cost-money = , tiền { $cost }
week = Tuần của bạn: đã thăm { $made }, cần thăm { $left }, tin chờ { $waiting }{ $deadline }
week-owed = Tuần của bạn: đã thăm { $made }, cần thăm { $left }, tin chờ { $waiting }{ $deadline }. Đã hứa: { $promises }
week-order = . Đặt cây trước { $day }
last-list = { $name }: { $facts }
last-fact = { $day } { $source }{ $block } { $what }
last-none = Chưa có tin gì về { $name }.
labour = { $name }, { $days } ngày tới: { $jobs }. Không rõ mất mấy ngày.
labour-job = { $task } { $block } { $day }
labour-none = { $name } không có việc trong { $days } ngày tới.
whose = Cuối { $digits }: { $people }. { $last }
whose-person = { $name } ({ $group }), đồng ý { $consent }{ $other }
whose-other = , thêm { $digits }
whose-last = Tin cuối { $day }
whose-never = Chưa nhắn tin
whose-none = Không hộ nào của bạn có số cuối { $digits }.
paid-none = { $group }: đã đóng { $held }. Chưa đến đợt bón hoặc chưa có giá. Nhắn NGÀY MUA PHÂN { $group }, giá bao, ngày.
paid-all = Tiền phân: { $groups }
paid-line = { $group } { $held } / { $total }
paid-list = Tiền phân { $group }: { $paid }/{ $of } đã đóng, { $held } / { $total }. Còn: { $people }{ $buying }
paid-whole = Tiền phân { $group }: cả { $of } đã đóng, { $held } / { $total }{ $buying }
paid-person = { $name } { $cents }
paid-entered = Đã ghi, đóng tổng cộng: { $people }. Sai? Nhắn lại số đúng.
paid-told = { $name }, { $leader } ghi bạn đã đóng { $cents } tiền phân. Sai? Nhắn GỌI TÔI. -{ $adviser }
paid-which = Ai đóng bao nhiêu tổng cộng? Nhắn ĐÓNG TIỀN, tên, số tiền.
buying-on = { ". " }Mua { $day }
buying-set = { $group } mua phân { $day }: { $bags } bao x { $price } = { $total }. Mỗi người: { $people }{ $left }
buying-left = { ". " }Dư { $kilograms } kg
buying-none = { $group } mua phân { $day }, { $price } một bao. Nay chưa đến đợt bón.
buying-which = Nhắn NGÀY MUA PHÂN, tổ, giá bao và ngày sắp tới.
grant-none = Trợ cấp không ghi ở đây: hỏi văn phòng. Cây chết, bản đồ, lần thăm thì có.
train-none = { $group }: chưa ghi buổi tập huấn nào. Nhắn ĐÃ TẬP HUẤN, việc và ai đến.
train-none-of = { $group }: chưa ghi buổi tập huấn nào về { $work }.
train-all = Tập huấn: { $groups }
train-list = { $work } { $group } { $day }: { $came }/{ $of } đến. Vắng: { $people }
train-whole = { $work } { $group } { $day }: cả { $of } đã xem.
train-topics = Đã hướng dẫn { $group }: { $topics }
train-topic = { $work } { $day } { $came }/{ $of }
train-entered = Đã ghi, { $work } { $day }, { $count } người đến: { $people }
train-which = Hướng dẫn việc gì? Nhắn ĐÃ TẬP HUẤN, việc và tên.
list-all = Chưa báo: { $groups }
list-group = { $group }, { $days } ngày: { $told }/{ $of } đã báo. Chưa: { $people }
list-none = { $group }: không thiếu ai. { $of } người có việc, đều có tin trong { $days } ngày.
list-person = { $name } { $task }
allot-all = Cây giống: { $groups }
allot-list = Cây giống { $group }: { $people }
allot-none = { $group }: không có cây tồn và không ai đặt chắc.
allot-clone = { $clone } tồn { $plants }{ $ready }, đặt { $ordered }
allot-line = { $group } { $people }
allot-ready = { " " }từ { $day }
allot-share = { $name } { $clone } { $plants }
stock-which = Bao nhiêu cây, dòng nào, khi nào có? Nhắn TỒN KHO, dòng, số cây, ngày.
