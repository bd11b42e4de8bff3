# Texts of the office's pages. They may be of any length and have any letters; no SMS says them.

# Door
page-come-in = Come in
page-your-name = Your whole name, as it is on the list
page-send-code = Send a code to my phone
page-door-help = No phone at hand, or the line is down? On the computer itself the office can ask for a code: budwood office code
page-code-sent = If this name may look here, a code is on its way to its phone. It is good for ten minutes.
page-code = Code
page-code-wrong = That code is not right, or it is too old.
page-other-name = Another name, or a new code
page-begin = To the first page
page-other-host = This address is not ours. Use the address that your office gave you.
page-other-origin = This form does not come from one of our pages. Nothing was done.
page-old-form = This form is too old. Nothing was done.
page-too-many = Too many are at the door. Try again in a minute.
page-busy = The page cannot be shown just now. Try again in a minute.
page-not-yours = This page is not for you.
page-not-there = There is no such page.

# Every page
page-skip = To the content
page-menu = Pages
page-go-out = Go out
page-today = Today
page-queue = Texts that wait
page-groups = Groups
page-sick = Sick trees
page-season = Season and rain
page-stock = Plants and fertiliser
page-line = The line
page-about = Who
page-what = What
page-is = Is
page-who = Who
page-group = Group
page-why = Why
page-day = Day
page-block = Block
page-number = Number
page-count = Count
page-yes = yes
page-no = no
page-nothing = nothing
page-never = never
page-unknown = not known
page-pct = { $pct } %
page-sum = Sum
page-late = late
page-new = new
page-old = old
page-very-old = very old
page-look-here = look here
page-minutes-ago = { $count } min ago
page-hours-ago = { $count } h ago
page-days-ago = { $count } days ago

# Today
page-waiting = Texts that wait for a person
page-none-waits = No text waits for you.
page-hours = Hours
page-gathers = Sickness that gathers
page-none-gathers = No sickness gathers.
page-sickness = Sickness
page-reports = Reports
page-since = Since
page-promises = Promised
page-none-promised = Nothing is promised.
page-to-whom = To whom
page-by = By
page-words = In your words
page-visits = Whom to visit first
page-none-to-visit = Nobody must be visited now.

# The line
page-line-well = The line is well.
page-line-held = Texts are held until somebody releases them: budwood release
page-clock = The clock of the computer is doubted: reminders wait.
page-leaving = Texts that wait to leave: { $count }
page-gateways = Gateways
page-gateway = Gateway
page-last-in = Last text in
page-last-out = Last text out
page-oldest = Waits longest
page-refused = Refused in a row
page-month = This month
page-parts = Parts
page-money = Money
page-budget-gone = Of the budget is gone
page-held = Not said, since the start
page-held-answers = Answers to phones that text too much
page-held-strangers = Answers to strangers
page-held-unpaid = Texts beyond the money of the day or month
page-held-machines = Answers to machines

# Groups
page-farmers = Farmers
page-planted-farmers = Planted
page-alive-pct = Alive
page-visited-pct = Counted on visits
page-gaps = Gaps
page-due = Due
page-late-jobs = Late
page-quiet = Quiet
page-sick-farmers = Sick
page-unreached = Not reached
page-figures = In figures
page-season-of = The season by weeks
page-sign-done = done
page-sign-seen = seen on a visit
page-sign-asked = asked by text
page-sign-late = late
page-members = Farmers of the group
page-blocks = Blocks
page-living = Living trees
page-due-jobs = Jobs due
page-heard = Last heard
page-coming = Texts of the next 14 days, unless the work is told before
page-none-coming = No text is planned for the next 14 days.
page-job = Job
page-due-day = Due
page-not-before = Text not before
page-why-due = it is due
page-why-again = asked before, not answered

# A farmer
page-consent = Consent
page-consent-given = given on { $day }
page-consent-withdrawn = withdrawn on { $day }
page-consent-unknown = not recorded: no reminder goes
page-language = Language
page-phones = Phones end in
page-hold = Left in peace
page-hold-yes = yes
page-land = Land
page-planted-on = Planted
page-sick-trees = Sick trees
page-job-on = { $task } { $day }
page-ready = When stands will likely be ready for opening: four times out of five within the bar; the line is the likely day
page-range = { $block }: likely { $likely }, between { $earliest } and { $latest } ({ $trees } trees measured on { $day })
page-facts = What was told
page-none-told = Nothing was told yet.
page-source = Source
page-told-by = Told by
page-told-on = Told on
page-fact = A fact
page-instead-of = Instead of
page-text = The text
page-asked-for = asked by text: { $task }
page-put-off = put off: { $task }
page-warned = warned of { $ailment } nearby
page-under-living = { $name } { $block }: what the living trees rest on
page-under-sick = { $name } { $block }: what the sick trees rest on
page-fact-line = { $day } { $block }: { $what }

# Sick trees
page-none-sick = No sickness is known that is not over.
page-trees = Trees
page-seen-on-visit = Seen on a visit
page-on-map = On the map
page-map = Map of the blocks with sick trees; the table below says the same
page-map-signs = Triangle: roots. Circle: leaves. Square: shoots. Diamond: termites. Star: other. Full: seen on a visit. Plus: nothing told. The number is that of the table.
page-north = N

# Season
page-rains = Rains
page-rains-begin = Rains begin
page-rains-end = Rains end
page-window = Planting
page-open-since = open since { $day }
page-window-shut = not open
page-rain-told = What was told
page-rain-reports = Rain of the last four weeks
page-none-rain = Nobody told of rain in the last four weeks.
page-ground = Ground
page-soaked = soaked
page-dry = no rain
page-millimetres = mm
page-ahead = { $group }: the next eight weeks
page-week-from = Week from
page-jobs-blocks = Jobs, with how many blocks
page-job-count = { $task } ({ $count })

# Plants and fertiliser
page-plants = { $group }: plants for plantings to come
page-none-wanted = { $group }: no plants are wanted.
page-clone = Clone
page-planting = Planting
page-plants-all = Plants
page-firm = Ordered
page-wished = Wished
page-nursery = { $group }: plants of nurseries
page-none-raised = { $group }: nothing is told of nurseries.
page-supply = There are
page-ready-on = Ready on
page-ordered = Ordered
page-shared = Shared out
page-feed = { $group }: fertiliser that is due, { $pooled } bags together or { $alone } alone
page-none-feed = { $group }: no fertiliser is due.
page-kilograms = kg

# A text that waits
page-no-reading = Nothing in it can be stored as it is.
page-next = Next (N)
page-open-jobs = Open jobs
page-last-facts = What was told last
page-store = Store
page-ask = Ask the sender again (A)
page-close = Seen to (C)
page-pass = Pass on (P)
page-pass-to = Pass on to
page-fix = This is wrong
page-fix-do = Put it right
page-right-number = The right number; leave it empty to take the fact back
page-reason = Why
page-counts-no-more = This was put right and counts no more.
page-not-done = That cannot be done: it is done already, or it is not yours.
