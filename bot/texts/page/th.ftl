# Texts of the office's pages. They may be of any length and have any letters; no SMS says them. From memory; needs a native reader.

# Door
page-come-in = เข้าสู่หน้า
page-your-name = ชื่อเต็มตามรายชื่อ
page-send-code = ส่งรหัสไปที่โทรศัพท์
page-door-help = ไม่มีโทรศัพท์หรือสายขัดข้อง? ที่เครื่องคอมพิวเตอร์เอง สำนักงานขอรหัสได้: budwood office code
page-code-sent = ถ้าชื่อนี้ดูได้ รหัสกำลังส่งไปที่โทรศัพท์ ใช้ได้สิบนาที
page-code = รหัส
page-code-wrong = รหัสไม่ถูก หรือเก่าเกินไป
page-other-name = ชื่ออื่น หรือรหัสใหม่
page-begin = ไปหน้าแรก
page-other-host = ที่อยู่นี้ไม่ใช่ของเรา ใช้ที่อยู่ที่สำนักงานให้ไว้
page-other-origin = แบบฟอร์มนี้ไม่ได้มาจากหน้าของเรา ไม่ได้ทำอะไร
page-old-form = แบบฟอร์มนี้เก่าเกินไป ไม่ได้ทำอะไร
page-too-many = มีคนเข้ามากเกินไป ลองใหม่ในหนึ่งนาที
page-busy = แสดงหน้านี้ไม่ได้ในตอนนี้ ลองใหม่ในหนึ่งนาที
page-not-yours = หน้านี้ไม่ใช่สำหรับคุณ
page-not-there = ไม่มีหน้านี้

# Every page
page-skip = ไปที่เนื้อหา
page-menu = หน้าต่างๆ
page-go-out = ออก
page-today = วันนี้
page-queue = ข้อความที่รอ
page-groups = กลุ่ม
page-sick = ต้นเป็นโรค
page-season = ฤดูและฝน
page-stock = ต้นกล้าและปุ๋ย
page-line = สายข้อความ
page-about = คนนี้
page-what = อะไร
page-is = คือ
page-who = ใคร
page-group = กลุ่ม
page-why = เพราะ
page-day = วัน
page-block = แปลง
page-number = เลขที่
page-count = จำนวน
page-yes = ใช่
page-no = ไม่
page-nothing = ไม่มี
page-never = ไม่เคย
page-unknown = ไม่ทราบ
page-pct = { $pct } %
page-sum = รวม
page-late = ช้า
page-new = ใหม่
page-old = นานแล้ว
page-very-old = นานมาก
page-look-here = ดูตรงนี้
page-minutes-ago = { $count } นาทีก่อน
page-hours-ago = { $count } ชม.ก่อน
page-days-ago = { $count } วันก่อน

# Today
page-waiting = ข้อความที่รอคนดู
page-none-waits = ไม่มีข้อความรอคุณ
page-hours = ชั่วโมง
page-gathers = โรคที่ลามเป็นกลุ่ม
page-none-gathers = ไม่มีโรคลามเป็นกลุ่ม
page-sickness = โรค
page-reports = รายงาน
page-since = ตั้งแต่
page-promises = สัญญาไว้
page-none-promised = ไม่มีสัญญาค้าง
page-to-whom = กับใคร
page-by = ภายใน
page-words = คำของคุณ
page-visits = ควรเยี่ยมใครก่อน
page-none-to-visit = ยังไม่ต้องเยี่ยมใคร

# The line
page-line-well = สายปกติ
page-line-held = ข้อความถูกพักไว้จนกว่าจะปล่อย: budwood release
page-clock = นาฬิกาเครื่องไม่น่าเชื่อ ข้อความเตือนรออยู่
page-leaving = ข้อความรอส่ง: { $count }
page-gateways = ช่องทางส่ง
page-gateway = ช่องทาง
page-last-in = เข้าล่าสุด
page-last-out = ออกล่าสุด
page-oldest = รอนานสุด
page-refused = ถูกปฏิเสธติดกัน
page-month = เดือนนี้
page-parts = ส่วน
page-money = เงิน
page-budget-gone = ใช้งบไปแล้ว
page-held = ไม่ได้ส่ง ตั้งแต่เริ่ม
page-held-answers = คำตอบถึงเบอร์ที่ส่งมากไป
page-held-strangers = คำตอบถึงคนแปลกหน้า
page-held-unpaid = ข้อความเกินเงินของวันหรือเดือน
page-held-machines = คำตอบถึงเครื่องอัตโนมัติ

# Groups
page-farmers = เกษตรกร
page-planted-farmers = ปลูกแล้ว
page-alive-pct = รอด
page-visited-pct = นับตอนเยี่ยม
page-gaps = ช่องว่าง
page-due = ถึงกำหนด
page-late-jobs = ช้า
page-quiet = เงียบ
page-sick-farmers = มีโรค
page-unreached = ติดต่อไม่ได้
page-figures = เป็นตัวเลข
page-season-of = ฤดูเป็นสัปดาห์
page-sign-done = ทำแล้ว
page-sign-seen = เห็นตอนเยี่ยม
page-sign-asked = ถามทางข้อความ
page-sign-late = ช้า
page-members = เกษตรกรในกลุ่ม
page-blocks = แปลง
page-living = ต้นที่รอด
page-due-jobs = งานถึงกำหนด
page-heard = ข่าวล่าสุด
page-coming = ข้อความ 14 วันข้างหน้า ถ้ายังไม่แจ้งงาน
page-none-coming = ไม่มีข้อความใน 14 วันข้างหน้า
page-job = งาน
page-due-day = กำหนด
page-not-before = ส่งไม่ก่อน
page-why-due = ถึงกำหนด
page-why-again = ถามแล้ว ยังไม่ตอบ

# A farmer
page-consent = ความยินยอม
page-consent-given = ให้เมื่อ { $day }
page-consent-withdrawn = ถอนเมื่อ { $day }
page-consent-unknown = ไม่มีบันทึก: ไม่ส่งข้อความเตือน
page-language = ภาษา
page-phones = โทรศัพท์ลงท้าย
page-hold = พักไว้
page-hold-yes = ใช่ ตอนนี้
page-land = พื้นที่
page-planted-on = ปลูกเมื่อ
page-sick-trees = ต้นเป็นโรค
page-job-on = { $task } { $day }
page-ready = เมื่อไรน่าจะเปิดกรีดได้: สี่ในห้าครั้งอยู่ในแถบ เส้นคือวันที่น่าจะใช่
page-range = { $block }: น่าจะ { $likely } ระหว่าง { $earliest } ถึง { $latest } (วัด { $trees } ต้นเมื่อ { $day })
page-facts = สิ่งที่แจ้ง
page-none-told = ยังไม่มีการแจ้ง
page-source = แหล่ง
page-told-by = แจ้งโดย
page-told-on = แจ้งเมื่อ
page-fact = ข้อเท็จจริง
page-instead-of = แทน
page-text = ข้อความ
page-asked-for = ถามทางข้อความ: { $task }
page-put-off = เลื่อน: { $task }
page-warned = เตือน: { $ailment } ใกล้ๆ
page-under-living = { $name } { $block }: ที่มาของต้นที่รอด
page-under-sick = { $name } { $block }: ที่มาของต้นเป็นโรค
page-fact-line = { $day } { $block }: { $what }

# Sick trees
page-none-sick = ไม่มีโรคที่ยังไม่จบ
page-trees = ต้น
page-seen-on-visit = เห็นตอนเยี่ยม
page-on-map = บนแผนที่
page-map = แผนที่แปลงที่มีต้นเป็นโรค ตารางข้างล่างบอกเหมือนกัน
page-map-signs = สามเหลี่ยม: ราก วงกลม: ใบ สี่เหลี่ยม: ยอด ข้าวหลามตัด: ปลวก ดาว: อื่นๆ ทึบ: เห็นตอนเยี่ยม บวก: ไม่มีแจ้ง เลขตรงกับตาราง
page-north = น

# Season
page-rains = ฝน
page-rains-begin = ฝนเริ่ม
page-rains-end = ฝนหมด
page-window = การปลูก
page-open-since = เปิดตั้งแต่ { $day }
page-window-shut = ยังไม่เปิด
page-rain-told = ที่แจ้งมา
page-rain-reports = ฝนสี่สัปดาห์ที่ผ่านมา
page-none-rain = ไม่มีใครแจ้งฝนในสี่สัปดาห์
page-ground = ดิน
page-soaked = ชุ่ม
page-dry = ไม่มีฝน
page-millimetres = มม.
page-ahead = { $group }: แปดสัปดาห์ข้างหน้า
page-week-from = สัปดาห์จาก
page-jobs-blocks = งาน และจำนวนแปลง
page-job-count = { $task } ({ $count })

# Plants and fertiliser
page-plants = { $group }: ต้นกล้าสำหรับปลูกครั้งต่อไป
page-none-wanted = { $group }: ไม่มีใครต้องการต้นกล้า
page-clone = พันธุ์
page-planting = วันปลูก
page-plants-all = ต้นกล้า
page-firm = สั่งแล้ว
page-wished = อยากได้
page-nursery = { $group }: ต้นกล้าของแปลงเพาะ
page-none-raised = { $group }: ไม่มีข่าวจากแปลงเพาะ
page-supply = มีอยู่
page-ready-on = พร้อมเมื่อ
page-ordered = สั่งแล้ว
page-shared = แบ่งแล้ว
page-feed = { $group }: ปุ๋ยถึงกำหนด รวมซื้อ { $pooled } ถุง แยกซื้อ { $alone } ถุง
page-none-feed = { $group }: ไม่มีปุ๋ยถึงกำหนด
page-kilograms = กก.

# A text that waits
page-no-reading = ยังเก็บตามนี้ไม่ได้
page-next = ถัดไป (N)
page-open-jobs = งานค้าง
page-last-facts = แจ้งล่าสุด
page-store = บันทึก
page-ask = ถามผู้ส่งอีกครั้ง (A)
page-close = จัดการแล้ว (C)
page-pass = ส่งต่อ (P)
page-pass-to = ส่งต่อให้
page-fix = ข้อนี้ผิด
page-fix-do = แก้ไข
page-right-number = จำนวนที่ถูก เว้นว่างเพื่อถอนข้อนี้
page-reason = เหตุผล
page-counts-no-more = ข้อนี้แก้แล้ว ไม่นับอีก
page-not-done = ทำไม่ได้ ทำไปแล้วหรือไม่ใช่ของคุณ
