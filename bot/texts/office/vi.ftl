# Những gì được in. From memory; needs a native reader who knows rubber.

sheet-meeting = Phiếu họp, { $group }
sheet-shares = Phần phân bón, { $group }
sheet-pickup = Nhận cây giống, { $group }
sheet-visits = Đi thăm, { $group }
sheet-holds = Người cần được yên, { $group }

sheet-number = Phiếu { $number }
sheet-printed = in ngày { $day }
sheet-text-back = Nhắn lại từng hàng: PHIẾU { $number }: 3 chết 20, 5 làm cỏ rồi
sheet-of-people = { $people } người, { $blocks } lô
sheet-bags = Mua chung { $bags } bao { $weight } kg, còn dư { $left } kg; mua riêng: { $alone } bao
sheet-price = Tất cả { $money }, đã trả { $held }
sheet-plants = Đã đặt { $plants } cây giống, còn muốn { $wished } cây
sheet-slots = Mỗi nửa giờ bốn hộ; để cây chỗ mát, giữ nguyên bầu đất.
sheet-restricted = Chỉ dành cho văn phòng và cán bộ. Đừng để nơi người khác thấy.

column-row = Số
column-farmer = Hộ
column-block = Lô
column-planted = Đã trồng
column-alive = Sống
column-gaps = Trống
column-due = Việc
column-dead = Chết
column-filled = Dặm
column-weeded = Làm cỏ
column-fed = Bón phân
column-signature = Ký hoặc điểm chỉ
column-trees = Cây
column-grams = g mỗi cây
column-kilograms = kg
column-bags = Bao (riêng)
column-money = Phải trả
column-paid = Đã trả
column-received = Đã nhận
column-time = Giờ
column-clone = Giống
column-ordered = Đặt
column-got = Nhận
column-spare = Dự phòng
column-place = Nơi
column-phone = Số cuối
column-reason = Vì sao
column-bring = Mang theo
column-notes = Ghi chú
column-since = Từ
column-until = Đến

bring-knife = dao sạch, túi lấy mẫu
bring-count = phiếu họp, để cùng đếm
bring-tape = thước dây và dây
bring-ear = thời gian lắng nghe
hold-grief = gia đình có tang
hold-open = đến khi cán bộ nói
