# Thai. From memory; needs a native reader who knows rubber.
# Every text fits one SMS of 70 letters, as marks above and below count too; a test says so. So
# texts are short: the job, the block, the figure, the date, the word to reply with, and the
# caution where there is one. Weekdays, signatures and thanks are left out.
# A longer form (`.long`) says more where names and figures leave room for it.
# 50 m away from felling are 2 lengths of an old tree of 25 m. Land is told in rai.
# Years are those of the Buddhist era. Thai has no plurals of counted things (CLDR).

## Numbers and languages

decimal = .
years-ahead = 543
language-name = Thai
language-called = ไทย, ภาษาไทย, thai, thailand, thaïlandais, thaï, tailandês, thái, thái lan, tiếng thái
languages = ภาษา: { $codes } ตอบ ภาษา และรหัส เช่น ภาษา th
language-set = ต่อไปจะเขียนเป็นภาษาไทย

## Days

weekday-1 = จ.
weekday-2 = อ.
weekday-3 = พ.
weekday-4 = พฤ.
weekday-5 = ศ.
weekday-6 = ส.
weekday-7 = อา.
month-1 = ม.ค.
month-2 = ก.พ.
month-3 = มี.ค.
month-4 = เม.ย.
month-5 = พ.ค.
month-6 = มิ.ย.
month-7 = ก.ค.
month-8 = ส.ค.
month-9 = ก.ย.
month-10 = ต.ค.
month-11 = พ.ย.
month-12 = ธ.ค.
day = { $day } { $month }
day-year = { $day } { $month } { $year }
month-year = { $month } { $year }
span = { $from }-{ $to }

## What was stored, read back

read-back = { $block }: { $facts } { $stand }ผิด ตอบ ไม่
read-back-rain = { $facts } ขอบคุณ ผิด ตอบ ไม่
clause-on = { $clause } { $day }
said-part = { $clause } (บางส่วน)
said-cleared = ถางที่แล้ว
said-lined = ปักหลักแล้ว
said-lined-count = ปักไม้ { $count } หลัก
said-holes-dug = ขุด { $count } หลุม
said-received-plants = รับกล้า { $count } ต้น
said-received-plants-uncounted = รับกล้าแล้ว
said-received-fertiliser = รับปุ๋ย{ $amount }
said-received = รับของแล้ว
said-planted = ปลูก { $count } ต้น
said-dead = ตายเพิ่ม { $count } ต้น
said-dead-none = ไม่มีต้นตาย
said-replaced = ซ่อม { $count } ต้น
said-weeded = ตัดหญ้าแล้ว
said-fertilised = ใส่ปุ๋ย{ $amount }
said-sprayed = พ่นแล้ว
said-pruned = ตัดแขนงแล้ว
said-branched = แตกกิ่ง { $count } ต้น
said-branched-uncounted = แตกกิ่งแล้ว
said-not-branched = ยังไม่แตกกิ่ง { $count } ต้น
said-not-branched-uncounted = ยังไม่แตกกิ่ง
said-branch-induction = บังคับกิ่ง { $count } ต้น
said-branch-induction-uncounted = บังคับกิ่งแล้ว
said-girth = วัดรอบ { $number } ต้น เฉลี่ย { $mean } ซม.
said-girth-share = รอบต้นได้ขนาด { $count }/{ $of }
said-height = สูง { $number } ต้น เฉลี่ย { $mean } ซม.
said-disease = พบ{ $ailment }
said-disease-count = { $ailment } { $count } ต้น
said-disease-none = ไม่มีต้นเป็นโรค
said-damage = เสียหาย: { $cause }
said-damage-count = เสีย { $count } ต้น: { $cause }
said-damage-none = ไม่เสียหาย
said-cover-sown = ปลูกพืชคลุมแล้ว
said-intercrop-sown = ปลูกแซม { $species }
said-intercrop-sown-unnamed = ปลูกแซมแล้ว
said-intercrop-none = ไม่ปลูกแซม
said-tapping-opened = เปิดกรีด { $count } ต้น
said-not-done = ยังไม่ได้{ $job }
said-not-done-unnamed = ยังไม่ได้ทำ
said-rain-soaked = ฝนชุ่มดิน
said-rain-none = ฝนไม่ตก
said-rain-mm = ฝน { $mm } มม.
amount = { " " }{ $value } { $unit }

## How the block stands after it

stand-planted = รวม { $total } { "" }
stand-room = รวม { $total } ปลูกได้อีก { $room } { "" }
living = { $first }/{ $planted }
living-filled = { $first }+{ $filled }/{ $planted }
stand-dead = ตายรวม { $dead } เหลือ { $living } { "" }
stand-alive = เหลือ { $living } { "" }
stand-filled = เหลือ { $living } ว่าง { $gaps } { "" }
stand-next = ทำอีกราว { $day } { "" }
stand-ready = กรีด { $earliest }-{ $latest } { "" }
stand-meets = พอแล้ว { $adviser } ดูก่อนเปิด { "" }
stand-close = ใกล้แล้ว วัดทุกต้นก่อนเปิด { "" }
stand-early = ยังบอกวันกรีดไม่ได้ { "" }
stand-look = ดูกิ่งใหม่ { $day } { "" }
stand-sick = อย่าถอนหรือพ่น { "" }
stand-harm = ระวังกิ่งหัก { "" }
stand-sick-untold = อย่าถอนหรือพ่น { "" }
stand-told = แจ้งแล้ว { "" }
stand-harm-untold = ระวังกิ่งหัก { "" }
stand-label = ทำตามฉลาก ล้างมือ { "" }

unit-ha = เฮกตาร์
unit-acre = เอเคอร์
unit-rai = ไร่
unit-m2 = ตร.ม.
unit-kg = กก.
unit-g = กรัม
unit-bag = กระสอบ
unit-tin = ถัง
unit-cup = ถ้วย/กำ
unit-l = ล.
unit-m = ม.
unit-cm = ซม.
unit-mm = มม.
unit-inch = นิ้ว
unit-foot = ฟุต
land = { $rai } ไร่

ailment-white_root = รากขาว
ailment-leaf_fall = ใบร่วง
ailment-pink = ราสีชมพู
ailment-leaf_spot = ใบจุด
ailment-mildew = ราแป้ง
ailment-dieback = ยอดแห้ง
ailment-termites = ปลวก
ailment-other = โรค

cause-wind = ลม
cause-fire = ไฟ
cause-flood = น้ำท่วม
cause-drought = แล้ง
cause-animals = สัตว์
cause-theft = ขโมย
cause-termites = ปลวก
cause-other = อื่นๆ

## Correcting

changed = แก้ { $block }: { $facts } { $stand }ผิดตอบ ไม่
moved = ย้าย { $old } ไป { $block }: { $facts } { $stand }ผิดตอบ ไม่
block-facts = { $block }: { $facts }
person-facts = { $name } { $block }: { $facts }
confirm-many = { $people }? ตอบ 1 ใช่ 2 ไม่
many-told = จด { $people } ผิดส่ง ไม่
leader-told = { $name } { $leader } แจ้ง { $facts } ผิดตอบ ไม่ ใน 7 วัน
leader-took-back = { $name } { $leader } ถอน { $facts }
contested-notice = { $name } ว่าผิด { $leader } แจ้ง { $facts } พักไว้
fixed-notice = { $adviser } แก้ { $block }: { $facts } ผิดส่ง โทรกลับ
taken-back = ยกเลิก { $facts } { $block } { $stand }
taken-back-ask = ยกเลิก { $facts } { $block } ที่ถูกคือ? ส่งเช่น { $example }
taken-back-count = ยกเลิก { $facts } { $block } เลขที่ถูกเท่าไร
nothing-to-undo = ไม่มีอะไรให้ยกเลิก ถ้าจะแจ้ง ส่งเช่น { $example }
unsure-change = ผิดตรงไหน ส่งเช่น { $example }

## Asking before storing

confirm = { $block }: { $facts }? { $why }ตอบ 1 ใช่ 2 ไม่
confirm-for = { $name } { $block }: { $facts }? { $why }ตอบ 1 ใช่ 2 ไม่
why-area = ที่ปลูกได้ { $holds } { "" }
why-alive = เหลือแค่ { $alive } { "" }
why-gaps = ว่างแค่ { $gaps } { "" }
why-large = มาก มีแค่ { $alive } { "" }
why-again = แจ้ง { $count } แล้ว { "" }
why-odd = { $value } ซม. ผิดปกติ { "" }
why-shrunk = ครั้งก่อน { $before } ซม. { "" }
why-inches = ซม. ไม่ใช่นิ้ว? { "" }
why-heaped = ลงท้าย 0/5 ดูให้แน่ { "" }
why-sum = รวมได้ { $told } แต่รอด { $alive } { "" }
why-thin = { $mean } ซม. ยังเล็ก { "" }
why-feed = เกินต้นละ 1 กก. { "" }
why-before = ก่อนวันปลูก { "" }
why-not-planted = ยังไม่ได้ปลูก { "" }
why-word = อ่าน "{ $from }" เป็น "{ $to }" { "" }
why-none = { "" }
ask-block = แปลงไหน { $blocks } ตอบชื่อแปลง
ask-block-unknown = ไม่มีแปลง { $unknown } แปลงไหน { $blocks }
no-blocks = { $name } ยังไม่มีแปลงในรายชื่อ { $adviser } จะเพิ่มให้ ไม่มีอะไรหาย
ask-count = { $block } { $facts }เท่าไร ตอบตัวเลข
ask-count-range = { $block } { $facts } { $low } หรือ { $high } ตอบเลขเดียว
ask-values = { $block } รอบต้นกี่ซม. ตอบตัวเลข เช่น 41 43 39
ask-values-height = { $block } สูงกี่ซม. ตอบตัวเลข เช่น 210 240
ask-date = วันไหน ตอบเช่น 12 พ.ค. หรือ 3 วันก่อน
ask-for-whom = ของใคร { $people } ตอบตัวเลข
dropped = ไม่ได้จด ส่งใหม่ได้ เช่น { $example }
bare-planted = ปลูก
bare-dead = ตาย
bare-replaced = ซ่อม
bare-holes_dug = ขุดหลุม
bare-tapping_opened = เปิดกรีด
bare-disease = เป็นโรค
bare-branched = แตกกิ่ง
bare-not_branched = ทำ
bare-other = ทำ

## Not understood, help, leaving

unclear = ขอโทษ ไม่เข้าใจ ส่งคำ ตัวเลข และแปลง เช่น { $example }
stranger = ขออภัย ยังไม่มีเบอร์นี้ในรายชื่อ โปรดแจ้งเจ้าหน้าที่ให้เพิ่ม
help = เช่น { $example } ถาม ทำอะไรต่อ/โทรกลับ/ภาษา ผิด:ไม่ เลิก:หยุด
help-adviser = กลุ่ม: สถานะ ช้า ตาย ว่าง โรค ฝน พันธุ์; เงียบ เยี่ยม คิว; ดูต่อ หยุด
help-adviser-more = ชื่อคน: รอบวง ประวัติ พัก; ถัดไป เสร็จ; กลุ่ม: ช่วงปลูก พักปลูก เตือน
help-clerk = { $group }: สถานะ ช้า เงียบ ตาย ว่าง คิว ถัดไป เสร็จ หยุด
help-viewer = { $group }: สถานะ ตาย ว่าง พันธุ์ โรค ฝน ดูต่อ หยุด
not-yours = คุณ{ $name } ทำหรือดูไม่ได้ ให้ { $adviser } ทำ
example = ตาย 8 { $block }
stopped = ไม่ส่งเตือนอีก ข้อมูลยังอยู่ รับใหม่ส่ง เริ่ม ลบชื่อส่ง ลบข้อมูล
started = ยินดีต้อนรับคุณ{ $name } จะเตือนงานราวสัปดาห์ละครั้ง เลิกรับ: ส่ง หยุด
welcome = คุณ{ $name } นี่ Budwood เตือนงานสวนยาง ภาษาอื่น:ภาษา เลิก:หยุด -{ $adviser }
same-again = จดไว้แล้ว ขอบคุณ

## Farmers ask

now = ตอนนี้: { $tasks } ทำแล้วแจ้ง -{ $adviser }
now-nothing = ตอนนี้ไม่มีงาน ต่อไป { $task } { $block } ราว { $day } -{ $adviser }
now-none = ยังไม่มีงาน ทำอะไรแล้วส่งมา เช่น { $example }
my-blocks = { $blocks }
my-block = { $block }: เหลือ { $living } ปลูก { $day }
my-block-empty = { $block }: ยังไม่ปลูก
when-task = { $task } { $block } ราว { $day } -{ $adviser }
when-tap = { $block } อาจกรีดราว { $likely } ({ $earliest }-{ $latest }) จาก { $trees } ต้น
when-tap-unknown = { $block } ยังไม่ได้วัดรอบต้น จึงบอกไม่ได้ อย่ากรีดก่อน { $adviser } ดู
when-tap-early = { $block } ยังเร็วไปที่จะบอกวันกรีด ({ $trees } ต้น) อย่ากรีดก่อน { $adviser } ดู
how-many-plants = { $area } ราว { $points } ต้น สั่ง { $order } เผื่อตาย นับหลักแน่กว่า -{ $adviser }
how-much-feed = { $block }: { $dose } ตัดหญ้า ดินชื้น { $ring }
feed-sum = { $trees }x{ $grams }ก={ $kilograms }กก
feed-doses = { $trees } ต้น { $products }={ $kilograms }
feed-brief = { $trees }x{ $products }ก={ $kilograms }กก
feed-grams = { $product } { $grams } ก.
feed-weight = { $kilograms } กก.
feed-ring = ใต้ชายพุ่ม
how-much-unknown = บอกพื้นที่ เช่น กี่ต้น 5 ไร่ หรือส่ง โทรกลับ ถึง { $adviser }
may-tap-no = ยังกรีดไม่ได้ { $block } ต้องรอบต้น { $girth } ซม. { $share }% กรีดเล็กไปไม่โต -{ $adviser }
may-tap-no-usual = ยังกรีดไม่ได้ { $block } มักรอ { $girth } ซม. { $share }% กรีดเล็กไปไม่โต ถาม { $adviser }
may-tap-check = { $block } ใกล้แล้ว { $adviser } จะวัดก่อนเปิด ยังอย่ากรีด
may-plant-wait = รอก่อน ยังไม่มีข่าวให้ปลูกที่ { $group } เก็บกล้าในร่ม ให้ชื้น
may-plant-yes = ปลูกได้ มีข่าว { $day } ดินชื้น ภายใน 3 วันหลังรับกล้า
may-fill-yes = ได้ ซ่อม { $block } ภายใน { $day } ดินชื้น พันธุ์เดิม กล้าแข็งแรง
may-fill-wait = ยังก่อน ฝนใกล้หมด ซ่อม { $block } ได้อีก { $day }
may-fill-late = { $block } เกิน { $months } เดือน กล้าใหม่ไม่โต ถาม { $adviser } ก่อน
may-spray = พ่นยา ไม่แนะนำใน SMS ดูฉลาก กฎหมาย ถามผู้ผ่านอบรม สวมชุด ลมสงบ ห่างน้ำ
may-other = ถาม { $adviser } ก่อน ส่ง โทรกลับ แล้วจะโทรหา
may-yes = ได้ { $name } { $task } { $block } ภายใน { $day } -{ $adviser }
who = ระบบ SMS สวนยางของ { $adviser } ไม่เคยขอเงินหรือรหัส เลิก: หยุด วิธี: ช่วย
my-data = มี ชื่อ เบอร์ { $group } { $blocks } รายงาน ยินยอม { $consent } ผิด:โทรกลับ
consent-none = ยังไม่มี
call-me = { $adviser } จะโทรหา ถ้ามีอันตราย ไปที่ปลอดภัยก่อน
call-me-untold = ตอนนี้แจ้งใครไม่ได้ โทรเอง ถ้ามีอันตราย ไปที่ปลอดภัยก่อน
call-me-notice = โทรหา { $name } ({ $group }) เบอร์ท้าย { $digits } ขอ { $day }
alarm-notice = โทรหา { $name } ({ $group }) เบอร์ท้าย { $digits } ส่ง { $day } อาจเป็น { $alarm }
alarm-grief = มีคนตาย
alarm-danger = อันตราย
alarm-illness = เจ็บป่วย
alarm-complaint = ร้องเรียน
alarm-money = เรื่องเงิน
alarm-fire = ไฟไหม้
alarm-snake = งูกัด
alarm-number = เบอร์/มือถือ
matter-notice = { $name } ({ $group }) { $digits } ส่ง { $day } { $alarm } อ่าน: ถัดไป
concern-call-me = ขอให้โทร
concern-question = คำถาม
concern-unclear = ไม่เข้าใจ
first-fire = พาทุกคนหนีไฟ/ควัน เรียกคนช่วย อย่าดับคนเดียว { $told }
first-snake = นอนนิ่ง ไปอนามัยทันที อย่ากรีด ดูด รัดแผล { $told }
first-danger = ไปที่ปลอดภัยก่อน เรียกคนใกล้ๆ { $told }
first-illness = ถ้าหนัก ไปอนามัย เลือดออก กดผ้าสะอาด { $told }
told-adviser = บอก { $adviser } แล้ว
told-nobody = ยังไม่ได้บอกใคร
grief = เสียใจด้วย { $told } หยุดเตือนจน { $adviser } ให้เริ่ม
told = ขอบคุณ บอก { $adviser } แล้ว จะอ่านข้อความนี้
not-told = ตอบไม่ได้ และบอก { $adviser } ไม่ได้ โปรดถามเอง
only-done = จดแต่งานที่ทำเสร็จ เสร็จแล้วส่ง เช่น { $example }
sick-notice = { $name } { $block } ({ $group }): { $facts }
cluster-notice = { $group } { $ailment } { $count } แห่ง { $day } ไปดู อย่าพ่น แล้วตอบ เตือน { $group }
warn-ask = { $group } { $ailment } { $count } แห่ง ดูแล้ว? { $blocks } แปลงดูด้วย ตอบ ใช่ { $code }
warn-done = แจ้ง { $blocks } แปลงใกล้ { $group } ให้ดู{ $ailment }
warn-none = { $group } ไม่มีกลุ่มโรค หรือไม่มีต้นใกล้ๆ
girth-notice = { $name } { $block } ({ $group }): รอบต้นช้ากว่าปกติราว { $months } เดือน ควรดู
open-notice = { $name } { $block }: วัด { $trees } ต้น ได้ขนาด { $share }% ไปดูก่อนเปิดกรีด
no-answer = ตอบไม่ได้ ถาม { $adviser }: โทรกลับ งานต่อไป: ทำอะไรต่อ
later = ได้ { $task } { $block } จะเตือนอีกราว { $day } -{ $adviser }
nothing-open = ไม่มีอะไรรอคำตอบ งานต่อไปส่ง ทำอะไรต่อ
done = จดว่าเสร็จ { $day }: { $task } { $block } ผิดตอบ ไม่
erase-ask = จะลบชื่อ เบอร์ ข้อความถาวร ถ้าให้ลบตอบ ใช่ { $code }
erased = ลบชื่อ เบอร์ ข้อความแล้ว ตัวเลขแปลงยังอยู่ สำเนาเก่ามีจนกว่าจะทิ้ง
nothing-held = ไม่มีชื่อของเบอร์นี้แล้ว ไม่มีอะไรต้องลบอีก
code-wrong = รหัสไม่ถูก ไม่ได้ทำอะไร
code-locked = รหัสผิดหรือมากไป ล็อก 1 วัน ถ้าไม่ใช่คุณ แจ้งสำนักงาน
visit-ask = บันทึกแทน { $name } ถึงเย็น ตอบ ใช่ { $code } ไม่ได้ขอ อย่าตอบ
stop-ask = เลิกรับทุกข้อความแม้มีอันตราย ตอบ ใช่ { $code }
held-back = ข้อความมาก จะตอบภายหลัง ถ้ามีอันตราย โทรขอช่วย
digest = อีก { $count } เรื่องในชั่วโมงนี้ ถาม { $people }

## Jobs in one or two words

job-order_plants = สั่งกล้า
job-dig_pits = ขุดหลุม
job-plant = ปลูก
job-survival_check = นับต้นตาย
job-backfill = ซ่อม
job-weed = ตัดหญ้า
job-feed = ใส่ปุ๋ย
job-prune = ตัดแขนง
job-induce_branching = บังคับกิ่ง
job-look_at_induced = ดูกิ่งใหม่
job-root_check = ดูราก
job-girth_census = วัดรอบ
job-clear = ถางที่
job-line = ปักหลัก
job-mulch = คลุมโคน
job-firebreak = แนวกันไฟ
job-count_tall = นับต้นสูง
job-get_ready = เตรียมกรีด
job-open = เปิดกรีด
job-fill_pits = กลบหลุม
job-sow_cover = พืชคลุม
job-leaf_check = ดูใบ
job-intercrop = พืชแซม
job-open_rest = เปิดที่เหลือ
job-rain_watch = แจ้งฝน
job-hand_over = ส่งต่อ
walk-every = 1/{ $every } จาก { $from }
walk-all = ทุกต้น
pit-edge = { $cm } ซม.
pit-round = กลม{ $wide }x{ $deep }ซม
datum-ground = สูง { $cm } ซม.
datum-union = จากตา{ $cm }ซม
usual = ราว { $value }
kind-cleared = ถางที่
kind-lined = ปักหลัก
kind-holes_dug = ขุดหลุม
kind-received = รับของ
kind-planted = ปลูก
kind-dead = นับต้นตาย
kind-replaced = ซ่อม
kind-weeded = ตัดหญ้า
kind-fertilised = ใส่ปุ๋ย
kind-sprayed = พ่น
kind-pruned = ตัดแขนง
kind-branched = แตกกิ่ง
kind-not_branched = แตกกิ่ง
kind-branch_induction = บังคับกิ่ง
kind-girth = วัด
kind-height = วัด
kind-disease = ตรวจ
kind-damage = ตรวจ
kind-cover_sown = หว่าน
kind-intercrop_sown = หว่าน
kind-tapping_opened = เปิดกรีด
kind-not_done = งาน
kind-rain = ฝน

## Nudges. One job, a date, one reply word.

nudge-order_plants = { $name } สั่งกล้าติดตารับรอง { $trees } ต้น { $block } { $by } สั่งแล้วตอบ เสร็จ
nudge-dig_pits = { $name } ขุด { $trees } หลุม { $pit } { $block } { $by } กันเด็กตก ตอบ หลุม+เลข
    .long = { $name } ขุด { $trees } หลุม { $pit } { $block } ถึง { $by } ปักธง กันเด็กตก ตอบ หลุม+เลข
nudge-plant = { $name } ปลูก { $block } { $trees } ต้น { $by } ดินชื้น แกะถุง อัดดิน ตอบ ปลูก+เลข
nudge-survival_check = { $name } เดินทุกแถว { $block } ภายใน { $by } ใน { $trees } ตายกี่ต้น ตอบ ตาย+เลข/0
nudge-backfill = คุณ{ $name } ซ่อม { $block } { $trees } ต้น { $by } ดินชื้น พันธุ์เดิม ตอบ ซ่อม+เลข
nudge-weed = { $name } ตัดหญ้า { $block } { $by } ใกล้ต้นใช้มือ มีดห่างเปลือก ตอบ ตัดหญ้า
    .long = { $name } ตัดหญ้า { $block } { $by } ใกล้ต้นใช้มือ มีดห่างเปลือกและตัว ตอบ ตัดหญ้า
nudge-feed = { $name } ปุ๋ย { $block } ถึง { $by } { $dose } ถุงมือ ตอบ ปุ๋ย
    .long = { $name } ปุ๋ย { $block } { $by } { $dose } ดินชื้น ห่างต้น ถุงมือ ตอบ ปุ๋ย
nudge-prune = { $name } ตัดแขนงใต้ { $height } ม. { $block } { $by } ยืนที่พื้น อย่าปีน ตอบ ตัดแขนง
nudge-induce_branching = { $name } { $block } { $trees } ต้นไร้กิ่ง ตามสอน อย่าปีน { $by } ตอบ สร้างพุ่ม+เลข
nudge-look_at_induced = คุณ{ $name } { $block } ภายใน { $by } แตกแล้วแก้มัด ตอบ แตกกิ่ง+เลข
nudge-root_check = { $name } ดูโคน { $block } ภายใน { $by } มีใยขาวไหม อย่าถอน ตอบ รากขาว+เลข/0
nudge-girth_census = { $name } วัดรอบ { $block } { $datum } { $walk } { $by } ตอบ รอบต้น+เลข
    .long = { $name } วัดรอบ { $block } { $datum } { $walk } ต้นเล็กด้วย { $by } ตอบ รอบต้น+เลข
nudge-clear = { $name } มีกล้า? โค่น { $block } { $by } ใช้ช่าง ห่าง 50 ม. ห้ามเผา ตอบ เสร็จ
    .long = { $name } มีกล้า? โค่น { $block } { $by } ใช้ช่าง คนอื่นห่าง 50 ม. ห้ามเผา ตอบ เสร็จ
nudge-line = { $name } ปัก { $trees } หลัก { $block } { $by } ได้ระดับ ถ้าลาดให้ขวาง ตอบ เสร็จ
nudge-mulch = คุณ{ $name } คลุมโคน { $block } { $by } ห่างต้น 20 ซม. บังแดดต้นอ่อน ตอบ เสร็จ
nudge-firebreak = { $name } แนวกันไฟ { $width } ม. รอบ { $block } { $by } ห้ามเผา ระวังมีด ตอบ เสร็จ
nudge-count_tall = คุณ{ $name } { $block } นับต้นเกิน { $height } ม. ไม่มีกิ่ง { $by } ตอบ ไม่แตกกิ่ง+เลข
nudge-get_ready = { $name } { $block } ใกล้เปิด ถาม { $adviser } { $by } อย่าเพิ่งกรีด/ซื้อ ตอบ เสร็จ
    .long = { $name } { $block } ใกล้เปิด ถาม { $adviser } เรียนกรีด { $by } อย่าเพิ่งกรีด/ซื้อ ตอบ เสร็จ
nudge-open = { $name } { $block } ได้เกณฑ์ { $share }% { $girth } ซม. { $adviser } ดูก่อนเปิด { $by } แค่ต้นหมาย
    .long = { $name } { $block } ได้เกณฑ์ { $share }% รอบ { $girth } ซม. { $adviser } ดูก่อนเปิด { $by } แค่ต้นที่หมาย
nudge-open-usual = { $name } { $block } { $share }% รอบ { $girth } ซม. { $adviser } ดูก่อนเปิด { $by } กรีดแค่ต้นที่หมาย
nudge-fill_pits = คุณ{ $name } กลบหลุม { $block } ภายใน { $by } ดินบนก่อน กันเด็กตก ตอบ เสร็จ
nudge-sow_cover = คุณ{ $name } หว่านพืชคลุม { $block } ภายใน { $by } ดินชื้น ห่างต้น ตอบ เสร็จ
nudge-leaf_check = คุณ{ $name } ดูใบ { $block } { $by } อย่าพ่นยา ตอบ ใบจุด/ใบร่วง+เลข ปกติ เสร็จ
field-round = { $block } { $by } { $jobs } อย่าปีน/ถอน ตอบ เสร็จ
    .long = { $block } { $by } เดินดู { $jobs } มีดห่าง อย่าปีน/ถอน/พ่น ตอบ เสร็จ
round-done = จดว่าเดินสวน { $block } แล้ว { $day } ไม่พบโรค ผิดตอบ ไม่
walk-then = { "/" }
walk-weeds = หญ้า
walk-shoots = แขนง
walk-roots = ราก
walk-leaves = ใบ
walk-crops = พืชแซม
nudge-near = { $name } พบ{ $ailment }ใกล้ๆ ดู { $block } { $by } อย่าถอน/พ่น ตอบ { $ailment }+เลข
    .long = { $name } พบ{ $ailment }ใกล้ๆ ดู { $block } { $by } อย่าถอน/พ่น ตอบ { $ailment }+เลข/0
nudge-intercrop = { $name } พืชแซม { $block } ห่างยาง { $distance } ม. { $by } ตอบ พืชแซม+ชื่อ ไม่มี เสร็จ
nudge-open_rest = { $name } วัดต้นเล็ก { $block } { $datum } { $by } ตอบ รอบต้น+เลข รอ { $adviser } ดู
nudge-rain_watch = คุณ{ $name } { $block } ฝนชุ่มดินตั้งแต่ { $since } ไหม ตอบ ฝนใช่ หรือ ฝนไม่
nudge-hand_over = คุณ{ $name } { $block } เป็นสวนกรีดแล้ว จบการเตือน ให้ช่วยส่ง โทรกลับ

## The adviser asks

waiting-list = รอ { $count } นานสุด { $hours } ชม. { $people } อ่าน: ถัดไป
waiting-none = ไม่มีข้อความรอ
waiting-person = { $name } { $hours } ชม.
waiting-next = { $name } { $group } { $digits } { $hours } ชม. { $concern } จบส่ง เสร็จ: { $text }
waiting-next-store = { $name } { $digits } บันทึก { $block } { $facts } ตอบ 1 จบส่ง เสร็จ: { $text }
waiting-next-choose = { $name } { $digits } ตอบเลข { $readings } จบส่ง เสร็จ: { $text }
waiting-reading = { $number } { $block } { $facts }
waiting-next-number = { $name } { $digits } ส่ง หาย/ย้ายเบอร์ { $name } จบส่ง เสร็จ: { $text }
waiting-closed = จบ { $name } เหลือรอ { $count }
waiting-old = { $count } ข้อความรอเกิน { $hours } ชม. { $name } ({ $group }) อ่าน: ถัดไป
held = ไม่เตือน { $name } จนกว่าจะส่ง เริ่มต่อ { $name }
held-until = ไม่เตือน { $name } ถึง { $day } เริ่มก่อน: เริ่มต่อ { $name }
gone-on = เตือน { $name } อีกแล้ว
not-held = { $name } ยังได้รับการเตือน

## A text or a group goes to a colleague
pass-whom = ส่งต่อใคร รับได้: { $people }
pass-nobody = ไม่มีคนอื่นในรายชื่อที่รับได้
pass-none = ยังไม่ได้อ่านข้อความ อ่าน: ถัดไป
passed = ส่งต่อ { $adviser } เรื่อง { $name } เหลือรอ { $count }
passed-notice = { $adviser } ส่งต่อเรื่อง { $name } ({ $group }) อ่าน: ถัดไป
hand-ask = ให้ { $name } ดูแล { $groups } ({ $farmers } คน รอ { $waiting } สัญญา { $owed }) ตอบ ใช่ { $code }
handed = { $name } ดูแล { $groups } แล้ว ({ $farmers } คน รอ { $waiting })
handed-notice = { $adviser } มอบ { $groups } ให้คุณ: { $farmers } คน รอ { $waiting } สัญญา { $owed }

## What an adviser owes to whom
promised = จดข้อ { $number } ถึง { $day } จบส่ง ทำแล้วตามสัญญา { $number }: { $text }
promise-kept = จบ { $text } เหลือสัญญา { $count }
promise-none = ไม่มีสัญญาเช่นนั้น
promise-full = มีสัญญาค้าง { $count } ข้อ ปิดบางข้อก่อน
owed = { $number } { $text } ({ $day })
owed-call = โทร { $name } ({ $day })

## An adviser's own words to a group or a person
announce-ask = { $phones } เครื่อง{ $cost } { $when }{ $left } ตอบ ใช่ { $code }: { $text }
announce-cost = { " " }ค่าส่ง { $cost }
announce-now = ทันที
announce-later = { $day } { $time }
announce-left = { " " }เว้น { $count }
announced = กำลังส่ง { $phones } เครื่อง { $when }{ $left }
announcement = { $text } -{ $adviser }
announce-nobody = ตอนนี้ไม่มีใครใน { $name } รับได้ ไม่ได้ส่ง
announce-long = ยาวเกิน 1 ข้อความ { $count } ตัว ไม่ได้ส่ง
announce-empty = จะให้บอกว่าอะไร ส่ง แจ้ง { $name } ตามด้วยข้อความ

## A phone is lost or found, a number is another one
phone-lost-ask = มือถือ { $people } ({ $digits }) หาย? จะไม่รับส่งใดๆ ตอบ ใช่ { $code }
phone-lost = พักเบอร์ { $digits } ของ { $people } แล้ว คืนใช้ส่ง พบแล้ว { $name }
phone-lost-adviser = พักเบอร์ { $digits } ของ { $people } แล้ว เบอร์ใหม่แจ้งสำนักงาน
phone-found-ask = มือถือ { $people } ({ $digits }) กลับถึงเจ้าของ? ตอบ ใช่ { $code }
phone-found = เบอร์ { $digits } ของ { $people } ใช้ได้อีก
phone-none = { $name } ไม่มีมือถืออื่นในรายชื่อ
phone-is-lost = มือถือนี้แจ้งหาย ไม่มีผลใดๆ เก็บข้อความไว้แล้ว พบเจ้าหน้าที่
number-ask = เบอร์ใหม่ { $name } { $number } เบอร์เก่าเลิกใช้? ตอบ ใช่ { $code }
number-moved = { $name } ใช้เบอร์ลงท้าย { $digits } เบอร์เก่าไม่มีผลแล้ว
number-own = เบอร์ของคุณเองเปลี่ยนที่สำนักงาน ไม่ใช่ทางข้อความ
number-unread = ไม่ใช่เบอร์มือถือในประเทศ ส่ง ย้ายเบอร์ { $name } และเบอร์เต็ม
number-taken = เบอร์ลงท้าย { $digits } เป็นของคนอื่น ยังไม่เปลี่ยน
status = { $group }: { $farmers } ราย ปลูก { $planted } ราย รอด { $alive } เงียบ { $quiet } โรค { $sick }{ $peace }
    .long = { $group } { $day }: { $farmers } ราย ปลูก { $planted } ราย รอด { $alive } { $late }{ $check }เงียบ { $quiet } โรค { $sick }{ $peace }
status-due = งาน: { $tasks } { "" }
status-due-none = ไม่มีงาน { "" }
status-late = ช้า: { $tasks } { "" }
status-late-none = ไม่มีช้า { "" }
status-check = รอตรวจเปิดกรีด { $count } { "" }
left-in-peace = { "" } งดรบกวน { $count }
feed-lost = { "" } ปุ๋ยที่พลาดใน { $days } วัน { $count } ดู { $name }
alive-pct = { $pct }%
alive-pct-visited = { $pct }% (เห็น { $visited }%)
alive-unknown = ยังไม่นับ
task-count = { $task } { $count }
more = +{ $count }
more-jobs = อีก { $count }
more-none = หมดแล้ว
status-all = { $groups }
status-line = { $group } รอด { $alive } ช้า { $late } เงียบ { $quiet } โรค { $sick }
late-all = ช้า: { $groups }
gaps-all = ว่าง: { $groups }
sick-all = โรค: { $groups }
group-count = { $group } { $count }
group-first = { $group } { $count } ({ $first })
gaps-order = { $order ->
    [0] ซ่อมไม่ทัน
   *[other] สั่ง { $order }
  }
late-list = ช้า { $group }: { $people }{ $peace }{ $lost }
late-none = ไม่มีใครช้าที่ { $group }{ $peace }{ $lost }
late-person = { $name } { $task } { $days } วัน
late-person-told = { $name } { $task } { $days } วัน เตือน 3 ครั้ง
quiet-list = เงียบเกิน { $limit } วัน: { $people }{ $why }
quiet-none = ไม่มีใครเงียบเกิน { $limit } วัน{ $why }
quiet-person = { $name } { $days }
quiet-person-never = { $name } ไม่เคย
gaps-list = ว่าง { $group }: { $gaps } ใน { $farmers } ราย { $order ->
    [0] ซ่อมไม่ทัน
   *[other] สั่ง { $order }
  }: { $people }
gaps-none = ไม่พบที่ว่าง { $group } ยังไม่นับ { $uncounted } แปลง
gaps-person = { $name } { $gaps }
sick-list = โรค { $group }: { $people }
sick-list-cluster = { $group }: { $ailment } { $count } แห่ง แต่ { $day } ไปดู: { $people }
sick-none = ไม่มีแจ้งโรคที่ { $group } ใน { $limit } วัน
sick-person = { $name } { $ailment } { $count }
visit-list = เยี่ยมก่อน: { $people }{ $peace }
visit-none = ยังไม่มีใครต้องเยี่ยม{ $peace }
visit-cluster = { $name } { $ailment } { $count } แห่ง
visit-lost = { $name } ตาย { $pct }%
visit-quiet = { $name } เงียบ { $days } วัน
visit-ending = { $name } { $task } เหลือ { $days } วัน
feed-group = ปุ๋ย { $group }: { $kilograms } กก. รวม { $pooled } ถุง แยก { $alone } { $people }
    .long = ปุ๋ย { $group }: { $trees } ต้น { $kilograms } กก. รวม { $pooled } ถุง 50 กก. แยก { $alone } { $people }
girth-list = รอบต้น { $group }: { $people }
girth-none = { $group } ยังไม่ได้วัดรอบต้น
feed-none = { $group } ยังไม่ถึงรอบใส่ปุ๋ย
member = { $name }: { $blocks } ล่าสุด { $day }
member-told = { $name }: { $blocks } ข่าวล่าสุด { $day }
member-never = { $name }: { $blocks } ยังไม่เคยส่ง
member-block = { $block } รอด{ $living }{ $due }
member-block-empty = { $block } { $area } ยังไม่ปลูก{ $due }
member-due = { " " }{ $task }
    .long = { " " }{ $task } { $day }
member-girth =  รอบ { $mean } ซม. { $against }{ $ready }
member-behind = ช้า { $months } ด.
member-ahead = เร็ว { $months } ด.
member-ready =  กรีด { $earliest }-{ $latest }
member-no-blocks = ไม่มีแปลง
member-which = คนไหน? { $people }
window-ask = เปิดช่วงปลูก { $group } { $day } { $rain }แจ้ง { $farmers } ราย ตอบ ใช่ { $code }
window-opened = เปิดช่วงปลูก { $group } { $day } แจ้ง { $farmers } ราย
rain-open = ฝน { $soaked }/{ $reporters } { "" }
rain-hold = ฝน { $soaked }/{ $reporters } รอ { "" }
rain-few = ฝน { $reporters } ราย { "" }
rain-begun-notice = { $group } ฝนชุ่ม { $soaked }/{ $reporters } แต่ { $day } อาจแล้งอีก เปิด: ช่วงปลูก { $group }
rain-stopped-notice = { $group } ไม่มีฝนชุ่มตั้งแต่ { $day } อย่าเพิ่งเปิดปลูก กล้าต้องร่มและน้ำ
rain-stopped-notice-open = { $group } ไม่มีฝนชุ่มตั้งแต่ { $day } อาจฝนหลอก พัก: พักปลูก { $group }
hold-none = { $group } ยังไม่เปิดปลูก
hold-ask = พักปลูก { $group }? หยุดเตือนปลูก { $farmers } ราย จนเปิดใหม่ ตอบ ใช่ { $code }
planting-held = พักปลูก { $group } ตั้งแต่ { $day } เปิดใหม่: ช่วงปลูก { $group }
not-your-group = กลุ่มหรือคนไหน กลุ่มของคุณ: { $groups }

## For the operator: how the service is

operator-well = ระบบปกติ { $state }
operator-trouble = ช่วยดูระบบ: { $troubles } { $state }
operator-state = เข้าล่าสุด { $hours } ชม. รอส่ง { $waiting } เดือนนี้ { $parts } ส่วน{ $share }
operator-state-silent = ยังไม่มีข้อความเข้า รอส่ง { $waiting } เดือนนี้ { $parts } ส่วน{ $share }
operator-share = ({ $pct }%)
operator-refused = { $gateway } ไม่รับข้อความ
operator-down = { $gateway } สายหลุด
operator-silent = { $gateway } ไม่มีเข้า { $days } วัน
operator-machine = โทรศัพท์ลงท้าย { $digits } ส่งข้อความเหมือนเครื่อง เราตอบน้อยลง ถามว่าของใคร
operator-oldest = มีข้อความรอส่ง { $hours } ชม.
operator-disk = ดิสก์ใกล้เต็ม
operator-spent = งบเดือนนี้หมด
operator-budget = งบเดือนนี้ใช้ { $pct }% { $parts } ส่วน { $stops }
operator-stops-none = ยังส่งทุกอย่าง
operator-stops-some = ไม่ตอบคนนอก หยุดเตือนที่ 90-95%
operator-stops-all = ส่งแค่รหัส หยุด ปฐมพยาบาล แจ้งเหตุ

## The adviser asks more. A fact is known by a visit, a list, a leader, or an own text: a letter each.

source-visit = ย
source-sheet = บ
source-leader = ห
source-text = ส
untold = ไม่ระบุ
quiet-failing = { $person } เบอร์เสีย
quiet-resting = { " " }พัก { $count }
quiet-idle = { " " }ไม่มีงาน { $count }
dead-all = ตาย: { $groups }
dead-line = { $group } { $dead }/{ $planted }
dead-list = ตาย { $group } { $dead }/{ $planted } ({ $pct }%) { $people }{ $uncounted }
dead-person = { $name } { $pct }% { $source }
dead-uncounted = { " " }ยังไม่นับ { $count }
dead-parts = ตาย { $group } { $dead }/{ $planted } ({ $pct }%) { $parts }
dead-part = { $what } { $count }
clone-all = พันธุ์: { $groups }
clone-list = พันธุ์ { $group }: { $clones }
clone-none = { $group } ยังไม่ได้ปลูก
clone-share = { $clone } { $pct }% (ตาย { $dead }/{ $planted })
order-all = สั่งกล้า: { $groups }
order-list = กล้า { $group } { $plants } แน่ { $firm } หวัง { $wished }{ $by } { $parts }
order-none = { $group } ไม่มีใครมีวันปลูก
order-part = { $clone } { $plants } { $day }
order-by = { " " }สั่งก่อน { $day }
order-firm = แน่ { $firm }
feed-all = กระสอบ: { $groups }
feed-share = { $name } { $kilograms } กก.
work-all = { $task }: { $groups }
work-line = { $group } ทำ { $done } ถึง { $due } ช้า { $late }
work-round = { $group } { $task } ทำ { $done } ถึง { $due } ช้า { $late } { $people }
root-all = ราก: { $groups }
root-round = ราก { $group } ดู { $done } ถึง { $due } ช้า { $late } { $found }
root-none = ไม่มีรากขาว
fire-all = แนวกันไฟ: { $groups }
fire-round = แนวกันไฟ { $group } ทำ { $done } ถึง { $due } ช้า { $late } ไหม้: { $found }
fire-none = ไม่มี
wind-all = ต้นโดนลม: { $groups }
wind-list = ลม { $group } { $days } วัน แจ้ง { $farmers }/{ $of } { $trees } ต้น { $people }
wind-none = { $group } ไม่มีแจ้งลมใน { $days } วัน
girth-all = แปลงที่วัด: { $groups }
girth-one = { $name } { $block } { $day } { $trees } ต้น { $mean } ซม. ±{ $spread }% ต่ำ { $smallest } { $against }
girth-share = { $name } { $block } { $day } ได้ขนาด { $count }/{ $of }
girth-unknown = ยังไม่ได้วัดรอบต้นของ { $name }
ready-one = { $name } { $block } กรีด { $likely } ช่วง { $earliest }-{ $latest }
ready-close = { $name } { $block } ใกล้แล้ว วัดและดูก่อนเปิด
ready-early = { $name } { $block } { $trees } ต้น ยังบอกไม่ได้
ready-unknown = { $name } { $block } ยังไม่วัด
ready-opened = { $name } { $block } กรีดอยู่
ready-group = กรีด { $group } { $years } ดู { $now } เร็วไป { $early } ไม่วัด { $unknown }
ready-year = { $year } { $stands } ({ $land })
ready-no-year = ยังไม่มีปี
ready-now = ดูก่อนเปิด: { $people }
ready-now-none = ยังไม่มีแปลงใกล้เปิดกรีด
ready-person = { $name } { $block } { $pct }%/{ $of } ({ $low }-{ $high }%)
map-all = แปลง: { $groups }
map-list = แผนที่ { $group } { $blocks } แปลง ไม่มีจุด { $point } ไม่มีขนาด { $area } เกิน { $limit } { $large }
map-point = ไม่มีจุด { $count }
rain-all = ฝน 10 วัน: { $groups }
rain-line-open = { $group } { $soaked }/{ $reporters } น่าเปิด
rain-line-hold = { $group } { $soaked }/{ $reporters } รอ
rain-line-few = { $group } แจ้ง { $reporters }
best = รอด: { $alive } ว่างสุด: { $gaps } เงียบสุด: { $quiet }
cost = เดือนนี้ทั้งระบบ { $parts } ส่วน{ $money } { $share } เบอร์เสีย { $failing }
cost-money = { " " }เงิน { $cost }
week = สัปดาห์: เยี่ยม { $made } ต้องเยี่ยม { $left } รอ { $waiting }{ $deadline }
week-owed = รอ { $waiting } สัญญา: { $promises }
week-order = { " " }สั่งกล้าก่อน { $day }
last-list = { $name }: { $facts }
last-fact = { $day } { $source }{ $block } { $what }
last-none = ยังไม่มีข่าวของ { $name }
labour = { $name } { $days } วัน: { $jobs } ไม่รู้ใช้กี่วัน
labour-job = { $task } { $block } { $day }
labour-none = { $name } ไม่มีงานใน { $days } วัน
whose = ท้าย { $digits }: { $people } { $last }
whose-person = { $name } ({ $group }) ยอม { $consent }{ $other }
whose-other = { " " }มี { $digits }
whose-last = ล่าสุด { $day }
whose-never = ยังไม่เคยส่ง
whose-none = ไม่มีเบอร์ท้าย { $digits }
paid-none = ไม่เก็บเรื่องเงิน ถามเหรัญญิกกลุ่ม
grant-none = ไม่เก็บเรื่องทุน ถามสำนักงาน
train-none = ไม่เก็บเรื่องอบรม ส่งชื่องานและกลุ่มแทน
