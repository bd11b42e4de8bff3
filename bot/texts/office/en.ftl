# What is printed: sheets for meetings, visits and the office. Not bound to the length of an SMS.
# Titles of columns are short: most columns are narrow.

sheet-meeting = Meeting sheet, { $group }
sheet-shares = Fertiliser shares, { $group }
sheet-pickup = Plant pick-up, { $group }
sheet-visits = Visits, { $group }
sheet-holds = People left in peace, { $group }

sheet-number = Sheet { $number }
sheet-printed = printed { $day }
sheet-text-back = Text rows back: SHEET { $number }: 3 dead 20, 5 weeded
sheet-of-people = { $people } people, { $blocks } blocks
sheet-bags = { $bags } bags of { $weight } kg bought together, { $left } kg left over; each alone: { $alone } bags
sheet-price = { $money } in all, { $held } paid so far
sheet-plants = { $plants } plants ordered, { $wished } more wished
sheet-slots = Four farmers each half hour; keep plants in the shade and their soil whole.
sheet-restricted = For the office and the advisers only. Do not leave it lying about.

column-row = No.
column-farmer = Farmer
column-block = Block
column-planted = Planted
column-alive = Alive
column-gaps = Gaps
column-due = Due
column-dead = Dead
column-filled = Filled
column-weeded = Weeded
column-fed = Fed
column-signature = Signature or thumb
column-trees = Trees
column-grams = g a tree
column-kilograms = kg
column-bags = Bags alone
column-money = To pay
column-paid = Paid
column-received = Received
column-time = Time
column-clone = Clone
column-ordered = Ordered
column-got = Got
column-spare = Spare
column-place = Place
column-phone = Phone ends
column-reason = Why
column-bring = Bring
column-notes = Notes
column-since = Since
column-until = Until

bring-knife = clean knife, bags for samples
bring-count = meeting sheet, to count together
bring-tape = tape and string
bring-ear = time to listen
hold-grief = a death in the family
hold-open = until the adviser says GO
