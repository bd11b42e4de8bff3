# สิ่งที่พิมพ์. From memory; needs a native reader who knows rubber.

sheet-meeting = ใบประชุม { $group }
sheet-shares = ส่วนแบ่งปุ๋ย { $group }
sheet-pickup = รับกล้า { $group }
sheet-visits = เยี่ยมสวน { $group }
sheet-holds = ผู้ที่ไม่ควรรบกวน { $group }

sheet-number = ใบที่ { $number }
sheet-printed = พิมพ์ { $day }
sheet-text-back = ส่งแถวกลับทาง SMS: ใบที่ { $number }: 3 ตาย 20, 5 ตัดหญ้าแล้ว
sheet-of-people = { $people } คน { $blocks } แปลง
sheet-bags = ซื้อรวม { $bags } กระสอบ กระสอบละ { $weight } กก. เหลือ { $left } กก. ถ้าแยกซื้อ { $alone } กระสอบ
sheet-price = รวม { $money } จ่ายแล้ว { $held }
sheet-plants = สั่งกล้า { $plants } ต้น อยากได้อีก { $wished } ต้น
sheet-slots = ครึ่งชั่วโมงละสี่ราย เก็บกล้าในที่ร่ม อย่าให้ดินแตก
sheet-restricted = สำหรับสำนักงานและที่ปรึกษาเท่านั้น อย่าวางทิ้งไว้

column-row = ที่
column-farmer = ชาวสวน
column-block = แปลง
column-planted = ปลูก
column-alive = รอด
column-gaps = ว่าง
column-due = งาน
column-dead = ตาย
column-filled = ซ่อม
column-weeded = ตัดหญ้า
column-fed = ใส่ปุ๋ย
column-signature = ลายเซ็นหรือนิ้วมือ
column-trees = ต้น
column-grams = ก. ต่อต้น
column-kilograms = กก.
column-bags = กระสอบ (แยก)
column-money = ต้องจ่าย
column-paid = จ่าย
column-received = รับของ
column-time = เวลา
column-clone = พันธุ์
column-ordered = สั่ง
column-got = ได้
column-spare = เผื่อ
column-place = ที่
column-phone = เลขท้าย
column-reason = เหตุ
column-bring = นำไป
column-notes = บันทึก
column-since = ตั้งแต่
column-until = ถึง

bring-knife = มีดสะอาด ถุงตัวอย่าง
bring-count = ใบประชุม ไว้นับด้วยกัน
bring-tape = สายวัดและเชือก
bring-ear = เวลารับฟัง
hold-grief = มีคนในครอบครัวเสียชีวิต
hold-open = จนกว่าที่ปรึกษาจะบอก
