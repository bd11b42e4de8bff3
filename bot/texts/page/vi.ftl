# Texts of the office's pages. They may be of any length and have any letters; no SMS says them. From memory; needs a native reader.

# Door
page-come-in = Vào
page-your-name = Họ tên đầy đủ như trong danh sách
page-send-code = Gửi mã đến điện thoại của tôi
page-door-help = Không có điện thoại, hoặc đường dây hỏng? Trên chính máy tính, văn phòng có thể lấy mã: budwood office code
page-code-sent = Nếu tên này được xem, mã đang gửi đến điện thoại. Mã dùng được mười phút.
page-code = Mã
page-code-wrong = Mã không đúng, hoặc đã quá cũ.
page-other-name = Tên khác, hoặc mã mới
page-begin = Về trang đầu
page-other-host = Địa chỉ này không phải của chúng tôi. Hãy dùng địa chỉ văn phòng đã cho.
page-other-origin = Mẫu này không đến từ trang của chúng tôi. Chưa làm gì cả.
page-old-form = Mẫu này đã quá cũ. Chưa làm gì cả.
page-too-many = Quá nhiều người đang vào. Thử lại sau một phút.
page-busy = Chưa hiện được trang. Thử lại sau một phút.
page-not-yours = Trang này không dành cho bạn.
page-not-there = Không có trang này.

# Every page
page-skip = Đến nội dung
page-menu = Các trang
page-go-out = Ra
page-today = Hôm nay
page-queue = Tin đang chờ
page-groups = Nhóm
page-sick = Cây bệnh
page-season = Mùa và mưa
page-stock = Cây giống và phân
page-line = Đường dây
page-about = Người này
page-what = Gì
page-is = Là
page-who = Ai
page-group = Nhóm
page-why = Vì sao
page-day = Ngày
page-block = Lô
page-number = Số
page-count = Số lượng
page-yes = có
page-no = không
page-nothing = không có
page-never = chưa bao giờ
page-unknown = không rõ
page-pct = { $pct } %
page-sum = Tổng
page-late = trễ
page-new = mới
page-old = đã lâu
page-very-old = rất lâu
page-look-here = xem ở đây
page-minutes-ago = { $count } phút trước
page-hours-ago = { $count } giờ trước
page-days-ago = { $count } ngày trước

# Today
page-waiting = Tin đang chờ người xem
page-none-waits = Không có tin nào chờ bạn.
page-hours = Giờ
page-gathers = Bệnh lan thành cụm
page-none-gathers = Không có bệnh lan thành cụm.
page-sickness = Bệnh
page-reports = Báo cáo
page-since = Từ
page-promises = Đã hứa
page-none-promised = Không hứa gì.
page-to-whom = Với ai
page-by = Trước ngày
page-words = Lời của bạn
page-visits = Nên thăm ai trước
page-none-to-visit = Chưa cần thăm ai.

# The line
page-line-well = Đường dây tốt.
page-line-held = Tin bị giữ đến khi có người thả: budwood release
page-clock = Đồng hồ máy đáng ngờ: tin nhắc phải chờ.
page-leaving = Tin chờ gửi: { $count }
page-gateways = Cổng gửi
page-gateway = Cổng
page-last-in = Tin đến cuối
page-last-out = Tin đi cuối
page-oldest = Chờ lâu nhất
page-refused = Bị từ chối liền
page-month = Tháng này
page-parts = Phần
page-money = Tiền
page-budget-gone = Ngân sách đã dùng
page-held = Không gửi, từ lúc chạy
page-held-answers = Trả lời số nhắn quá nhiều
page-held-strangers = Trả lời người lạ
page-held-unpaid = Tin vượt tiền ngày hoặc tháng
page-held-machines = Trả lời máy

# Groups
page-farmers = Nông dân
page-planted-farmers = Đã trồng
page-alive-pct = Sống
page-visited-pct = Đếm khi thăm
page-gaps = Chỗ trống
page-due = Đến hạn
page-late-jobs = Trễ
page-quiet = Im lặng
page-sick-farmers = Có bệnh
page-unreached = Không liên lạc
page-figures = Bằng số
page-season-of = Mùa theo tuần
page-sign-done = đã làm
page-sign-seen = thấy khi thăm
page-sign-asked = đã hỏi qua tin
page-sign-late = trễ
page-members = Nông dân của nhóm
page-blocks = Các lô
page-living = Cây sống
page-due-jobs = Việc đến hạn
page-heard = Tin cuối
page-coming = Tin 14 ngày tới, nếu chưa báo việc
page-none-coming = Không có tin nào trong 14 ngày tới.
page-job = Việc
page-due-day = Đến hạn
page-not-before = Gửi không trước
page-why-due = đến hạn
page-why-again = đã hỏi, chưa trả lời

# A farmer
page-consent = Đồng ý
page-consent-given = đã cho ngày { $day }
page-consent-withdrawn = đã rút ngày { $day }
page-consent-unknown = chưa ghi: không gửi tin nhắc
page-language = Ngôn ngữ
page-phones = Điện thoại tận cùng
page-hold = Để yên
page-hold-yes = có, lúc này
page-land = Đất
page-planted-on = Trồng ngày
page-sick-trees = Cây bệnh
page-job-on = { $task } { $day }
page-ready = Khi nào vườn có thể mở cạo: bốn trên năm lần nằm trong thanh; vạch là ngày dễ nhất
page-range = { $block }: có thể { $likely }, từ { $earliest } đến { $latest } (đo { $trees } cây ngày { $day })
page-facts = Những gì đã báo
page-none-told = Chưa báo gì.
page-source = Nguồn
page-told-by = Người báo
page-told-on = Báo ngày
page-fact = Một sự việc
page-instead-of = Thay cho
page-text = Tin nhắn
page-asked-for = đã hỏi qua tin: { $task }
page-put-off = hoãn: { $task }
page-warned = đã báo: { $ailment } gần đây
page-under-living = { $name } { $block }: căn cứ của cây sống
page-under-sick = { $name } { $block }: căn cứ của cây bệnh
page-fact-line = { $day } { $block }: { $what }

# Sick trees
page-none-sick = Không có bệnh nào chưa hết.
page-trees = Cây
page-seen-on-visit = Thấy khi thăm
page-on-map = Trên bản đồ
page-map = Bản đồ các lô có cây bệnh; bảng dưới nói cùng điều đó
page-map-signs = Tam giác: rễ. Tròn: lá. Vuông: chồi. Thoi: mối. Sao: khác. Đặc: thấy khi thăm. Dấu cộng: chưa báo gì. Số là số trong bảng.
page-north = B

# Season
page-rains = Mưa
page-rains-begin = Mưa bắt đầu
page-rains-end = Mưa hết
page-window = Trồng
page-open-since = mở từ { $day }
page-window-shut = chưa mở
page-rain-told = Đã báo
page-rain-reports = Mưa bốn tuần qua
page-none-rain = Bốn tuần qua không ai báo mưa.
page-ground = Đất
page-soaked = ướt đẫm
page-dry = không mưa
page-millimetres = mm
page-ahead = { $group }: tám tuần tới
page-week-from = Tuần từ
page-jobs-blocks = Việc, và ở mấy lô
page-job-count = { $task } ({ $count })

# Plants and fertiliser
page-plants = { $group }: cây giống cho đợt trồng tới
page-none-wanted = { $group }: không cần cây giống.
page-clone = Giống
page-planting = Ngày trồng
page-plants-all = Cây giống
page-firm = Đã đặt
page-wished = Mong muốn
page-nursery = { $group }: cây giống của vườn ươm
page-none-raised = { $group }: vườn ươm chưa báo gì.
page-supply = Có
page-ready-on = Sẵn ngày
page-ordered = Đã đặt
page-shared = Đã chia
page-feed = { $group }: phân đến hạn, mua chung { $pooled } bao hoặc riêng { $alone } bao
page-none-feed = { $group }: không có phân đến hạn.
page-kilograms = kg

# A text that waits
page-no-reading = Chưa ghi được gì như vậy.
page-next = Tiếp (N)
page-open-jobs = Việc còn mở
page-last-facts = Báo gần nhất
page-store = Ghi
page-ask = Hỏi lại người gửi (A)
page-close = Đã xử lý (C)
page-pass = Chuyển (P)
page-pass-to = Chuyển cho
page-fix = Điều này sai
page-fix-do = Sửa lại
page-right-number = Số đúng; để trống để rút lại
page-reason = Lý do
page-counts-no-more = Điều này đã sửa và không còn tính.
page-not-done = Không làm được: đã xong, hoặc không phải của bạn.
