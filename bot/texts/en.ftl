# English. Every text fits one SMS of 160 GSM characters at its longest values; a test says so.
# Names come last in importance: they are shortened before a text grows to a second part.
# A text may have a longer form (`.long`), which goes where it fits.
# Each caution is in the list of tests/wording/cautions.txt, and is said in every language.
# Fertiliser lies under the edge of the leaves until year 4, then 1 m off (English rendering of a
# Vietnamese procedure on weeds and fertilisation, 2018). Mulch keeps 20 cm off the stem.

## Days

weekday-1 = Mon
weekday-2 = Tue
weekday-3 = Wed
weekday-4 = Thu
weekday-5 = Fri
weekday-6 = Sat
weekday-7 = Sun
month-1 = Jan
month-2 = Feb
month-3 = Mar
month-4 = Apr
month-5 = May
month-6 = Jun
month-7 = Jul
month-8 = Aug
month-9 = Sep
month-10 = Oct
month-11 = Nov
month-12 = Dec
day = { $weekday } { $day } { $month }
day-year = { $day } { $month } { $year }
month-year = { $month } { $year }
span = { $from } to { $to }

## Numbers and languages. Other languages are called by these names too, separated by commas.

decimal = .
years-ahead = 0
language-name = English
language-called = english, anglais, inggris, ingles, anh, tieng anh, angkrit, อังกฤษ, ภาษาอังกฤษ
languages = Languages: { $languages }. Reply LANGUAGE and one of them, like LANGUAGE en
language-set = From now on I write in English.

## What was stored, read back

read-back = { $block }: { $facts }. { $stand }Wrong? Text NO
read-back-rain = { $facts }. Thank you. Wrong? Text NO
clause-on = { $clause } { $day }
said-part = { $clause } (a part)
said-cleared = land cleared
said-lined = rows pegged
said-lined-count = { $count } pegs
said-holes-dug = { $count } holes dug
said-received-plants = { $count } plants received
said-received-plants-uncounted = plants received
said-received-fertiliser = fertiliser received{ $amount }
said-received = received
said-planted = { $count } planted
said-dead = { $count ->
    [one] 1 more dead tree
   *[other] { $count } more dead trees
  }
said-dead-none = no dead
said-replaced = { $count } gaps filled
said-weeded = weeded
said-fertilised = fed{ $amount }
said-sprayed = sprayed
said-pruned = side shoots cut
said-branched = { $count } trees branched
said-branched-uncounted = trees branched
said-not-branched = { $count } trees not branched
said-not-branched-uncounted = trees not branched
said-branch-induction = { $count ->
    [one] 1 tree made to branch
   *[other] { $count } trees made to branch
  }
said-branch-induction-uncounted = trees made to branch
said-girth = girth of { $number ->
    [one] 1 tree
   *[other] { $number } trees
  }, mean { $mean } cm
said-girth-share = girth, { $count } of { $of } thick enough
said-height = height of { $number ->
    [one] 1 tree
   *[other] { $number } trees
  }, mean { $mean } cm
said-disease = { $ailment } seen
said-disease-count = { $ailment } on { $count ->
    [one] 1 tree
   *[other] { $count } trees
  }
said-disease-none = no sick trees
said-damage = { $cause } damage
said-damage-count = { $cause } damage to { $count ->
    [one] 1 tree
   *[other] { $count } trees
  }
said-damage-none = no damage
said-cover-sown = cover crop sown
said-intercrop-sown = { $species } sown
said-intercrop-sown-unnamed = food crop sown
said-intercrop-none = no food crop
said-tapping-opened = { $count } trees opened
said-not-done = not done yet: { $job }
said-not-done-unnamed = not done yet
said-rain-soaked = soaking rain
said-rain-none = no rain
said-rain-mm = { $mm } mm of rain
amount = , { $value } { $unit }

## How the block stands after it

stand-planted = { $total } in all. { "" }
stand-room = { $total } in all, room for { $room } more. { "" }
# Of the first trees so many live, so many filled in live, of those planted at first.
living = { $first } of { $planted }
living-filled = { $first } + { $filled } of { $planted }
stand-dead = { $dead } in all, { $living } alive. { "" }
stand-alive = { $living } alive. { "" }
stand-filled = { $living } alive, { $gaps ->
    [one] 1 gap
   *[other] { $gaps } gaps
  } left. { "" }
stand-next = Do this again about { $day }. { "" }
stand-ready = Likely ready to tap { $earliest } to { $latest }. { "" }
stand-meets = The girth is enough. { $adviser } looks before you open. { "" }
stand-close = Almost ready: measure all trees before opening. { "" }
stand-early = Too early to say when to tap. { "" }
stand-look = Look for new shoots from { $day }. { "" }
stand-sick = { $adviser } is told. Do not pull or spray yet. { "" }
stand-harm = { $adviser } is told. Stay clear of hanging branches. { "" }
stand-sick-untold = Do not pull or spray yet. { "" }
stand-told = { $adviser } is told. { "" }
stand-harm-untold = Stay clear of hanging branches. { "" }
stand-label = Follow the label. Wash hands. { "" }

unit-ha = ha
unit-acre = acres
unit-rai = rai
unit-m2 = m2
unit-kg = kg
unit-g = g
unit-bag = bags
unit-tin = tins/buckets
unit-cup = cups/handfuls
unit-l = l
unit-m = m
unit-cm = cm
unit-mm = mm
unit-inch = inches
unit-foot = feet
land = { $hectares } ha

ailment-white_root = white root
ailment-leaf_fall = leaf fall
ailment-pink = pink disease
ailment-leaf_spot = leaf spot
ailment-mildew = mildew
ailment-dieback = dieback
ailment-termites = termites
ailment-other = sickness

cause-wind = wind
cause-fire = fire
cause-flood = flood
cause-drought = drought
cause-animals = animal
cause-theft = theft
cause-termites = termite
cause-other = other

## Correcting

changed = Changed on { $block }: { $facts }. { $stand }Wrong? Text NO
moved = Moved from { $old } to { $block }: { $facts }. { $stand }Wrong? Text NO
block-facts = { $block }: { $facts }
person-facts = { $name } { $block }: { $facts }
confirm-many = { $people }? Reply 1 yes, 2 no
sheet-none = There is no sheet { $number } of yours. Write it as it stands on the paper: SHEET, its number, then row and news: SHEET 12: 3 dead 20
sheet-rows = Sheet { $number } has rows 1 to { $rows }. Write row and news: SHEET { $number }: 3 dead 20, 5 weeded
many-told = Noted: { $people }. Wrong? Text NO
leader-told = { $name }, { $leader } told of your { $facts }. Not so? Reply NO within 7 days. -{ $adviser }
leader-took-back = { $name }, { $leader } took back what was told of your { $facts }. -{ $adviser }
contested-notice = { $name } ({ $group }) says it is not so, what { $leader } told of { $facts }. It is set aside.
fixed-notice = { $adviser } put right on { $block }: { $facts }. Not so? Text CALL ME
fixed-notice-leader = { $adviser } put right on { $block }: { $facts }. Not so? Reply NO within 7 days.
fixed = Changed on { $block }: { $facts }. { $stand }To take it back text UNDO { $number }
fixed-moved = Moved from { $old } to { $block }: { $facts }. { $stand }To take it back text UNDO { $number }
put-back = Again as before on { $block }: { $facts }. { $stand }
taken-back = Taken back: { $facts } on { $block }. { $stand }
taken-back-ask = Taken back: { $facts } on { $block }. What is right? Send it again, like { $example }
taken-back-count = Taken back: { $facts } on { $block }. What is the right number?
nothing-to-undo = There is nothing to take back. To report write a word and a number, like { $example }
unsure-change = What is wrong? Send the right one, like: { $example }

## Asking before storing

confirm = { $block }: { $facts }? { $why }Reply 1 yes, 2 no
confirm-for = { $name } { $block }: { $facts }? { $why }Reply 1 yes, 2 no
why-area = The land holds about { $holds }. { "" }
why-alive = Only { $alive } trees are alive. { "" }
why-gaps = Only { $gaps } gaps are known. { "" }
why-large = That is many for { $alive } trees. { "" }
why-again = You told us { $count } already. { "" }
why-odd = { $value } cm is unusual. { "" }
why-shrunk = Last time the mean was { $before } cm. { "" }
why-inches = Is that cm, not inches? { "" }
why-heaped = All end in 0 or 5: please be sure. { "" }
why-sum = Branched plus not branched is { $told }, alive are { $alive }. { "" }
why-thin = Mean girth is { $mean } cm, too thin to tap. { "" }
why-feed = That is over 1 kg for each tree. { "" }
why-before = That is before planting. { "" }
why-not-planted = Nothing is planted there yet. { "" }
why-word = I read "{ $from }" as "{ $to }". { "" }
why-none = { "" }
ask-block = Which block: { $blocks }? Reply with its name.
ask-block-unknown = I know no block { $unknown }. Which is it: { $blocks }?
no-blocks = Your land is not on my list yet, { $name }. { $adviser } will add it. Nothing is lost.
ask-count = How many, for { $facts } on { $block }? Reply with the number.
ask-count-range = { $low } or { $high }, for { $facts } on { $block }? Reply with one number.
ask-values = What girths in cm on { $block }? Reply with numbers, like 41 43 39
ask-values-height = What heights in cm on { $block }? Reply with numbers, like 210 240
ask-date = On which day? Reply like 12 May or 3 days ago.
ask-for-whom = For whom? { $people }. Reply with the number.
dropped = Not stored. Send it again when you like, like { $example }
bare-planted = planted trees
bare-dead = dead trees
bare-replaced = filled gaps
bare-holes_dug = holes dug
bare-tapping_opened = opened trees
bare-disease = sick trees
bare-branched = trees with new branches
bare-not_branched = trees
bare-other = trees

## Not understood, help, leaving

unclear = Sorry, I did not understand. Write a word, a number and the block, like { $example }
stranger = I do not know this number. Please ask your adviser to put it on the list.
help = Text what you did: { $example }, weeded B, fed B. Ask: WHAT NOW, CALL ME, LANGUAGE. Mistake: NO. End texts: STOP. -{ $adviser }
help-adviser = Ask, with a group: STATUS LATE DEAD GAPS ORDER BAGS GIRTH READY SICK ROOT WIND FIRE RAIN CLONE MAP; QUIET VISIT WEEK COST WAITING. Then: MORE. End: STOP
help-adviser-more = With a farmer: GIRTH READY LAST LABOUR HOLD GO LOST MOVED. NEXT, DONE, BEST, WHO and digits. Groups: PRUNE GRANT TRAIN PAID LIST WINDOW WARN. Then: MORE
help-adviser-people = People and land: NEW OWNER Keti A Pira. SPLIT Keti A Pira 240. NEW MEMBER, group, name, number. LEAVES GROUP Keti. SECOND PHONE Keti, name, number. Then: MORE
help-adviser-deeds = TELL, group, words. ASK WIND and group, ASK LEADERS. FIX Keti A dead 3 not 4. HANDOVER, P and name. call Keti Friday, KEPT. Visit: from Keti: dead 4 A
help-clerk = Ask of { $group }: STATUS DEAD GAPS ORDER CLONE SICK RAIN MAP WHO LIST. Texts: WAITING, NEXT, then DONE. Adviser's phone lost: LOST and name. MORE. End: STOP
help-viewer = Ask about { $group }: STATUS DEAD GAPS ORDER GIRTH READY CLONE SICK RAIN MAP. Then: MORE. End: STOP
help-look-more = Also: LATE QUIET VISIT CAUSE BAGS PAID TRAIN ALLOT ROOT WIND FIRE GRANT BEST. With a farmer: GIRTH READY LAST LABOUR. Work: PRUNE and a group
help-leader = Text what was done: { $example }. Of members: Yano weeded, Nilo dead 3. Ask: LIST TRAIN PAID BAGS, WHAT NOW, CALL ME. Mistake: NO. End: STOP -{ $adviser }
help-nursery = Text plants: STOCK GT1 600 15 Nov, DISPATCHED GT1 200. Ask: STOCK ORDERS ALLOT, CALL ME, LANGUAGE. End texts: STOP. -{ $adviser }
not-yours = That is not for you to do or see here, { $name }; { $adviser } can. What you can: HELP
example = dead 8 { $block }
stopped = Done. No more reminders to this number. Your record is kept. Text START to return, ERASE to take your name out.
started = Welcome, { $name }. Reminders for your blocks will come, about one a week. You can end them at any time: text STOP. -{ $adviser }
welcome = Hello { $name }, this is Budwood: texts about work in your rubber, about one a week. Answer in your own words. Other language: LANGUAGE. To end: STOP. -{ $adviser }
same-again = I have that already, thank you.

## Farmers ask

now = { $name }, now: { $tasks }. Text me when done. -{ $adviser }
now-nothing = { $name }, nothing is due now. Next: { $task } { $block } about { $day }. -{ $adviser }
now-none = { $name }, nothing is due and no date is set yet. Text what you did, like { $example }. -{ $adviser }
my-blocks = { $blocks }
my-block = { $block }: { $living } alive, planted { $day }
my-block-empty = { $block }: not planted yet
when-task = { $task } on { $block }: about { $day }. -{ $adviser }
when-tap = { $name }, { $block } is likely ready to tap about { $likely }, maybe { $earliest } to { $latest }. This comes from { $trees } trees; the next count tells more. -{ $adviser }
when-tap-unknown = { $name }, no girths of { $block } are known yet, so I can not say. Measure when I ask. Do not tap before { $adviser } has looked.
when-tap-early = { $name }, it is too early to say when { $block } can be tapped: { $trees } trees tell too little. Measure when I ask. Do not tap before { $adviser } has looked.
how-many-plants = For { $area } about { $points } plants; order { $order } to cover losses. Your pegs are the true number. -{ $adviser }
how-much-feed = { $block }: { $dose }. Weed first, wet soil, in a ring { $ring }. -{ $adviser }
feed-sum = { $trees } trees x { $grams } g = { $kilograms } kg
feed-doses = { $trees } trees, { $products } a tree: { $kilograms }
feed-brief = { $trees } x { $products } g = { $kilograms } kg
feed-grams = { $product } { $grams } g
feed-weight = { $kilograms } kg
feed-ring = under the outer leaves, at most 1 m off the stem
how-much-unknown = Tell me the area, like: how many plants for 1.2 ha. Or ask { $adviser }: text CALL ME
may-tap-no = Not yet, { $name }: { $block } opens at { $girth } cm girth, when { $share }% of trees have it. Thin trees stay thin when tapped. -{ $adviser }
may-tap-no-usual = Not yet, { $name }: { $block } is often opened near { $girth } cm on { $share }% of trees, but { $adviser } decides. Thin trees stay thin when tapped.
may-tap-check = { $block } looks close, { $name }. { $adviser } measures before you open. Do not tap yet.
may-plant-wait = Wait, { $name }. It is not yet time to plant at { $group }. Keep plants shaded and wet. -{ $adviser }
may-plant-yes = Yes, { $name }: planting is open since { $day }. Plant in wet soil within 3 days of getting plants. -{ $adviser }
may-fill-yes = Yes: fill the gaps of { $block } by { $day } while soil is wet, same clone, strong plants. -{ $adviser }
may-fill-wait = Not now: too little rain is left for new plants on { $block }. Fill again from { $day }. -{ $adviser }
may-fill-late = Better not on { $block }: after { $months } months new plants stay small in the shade of the others. Ask { $adviser } first.
may-spray = I can not give spray advice by text. Follow label and local law, ask a trained person. Cover up, no wind, keep off bark and water. Text CALL ME
may-other = Better ask { $adviser } first. Text CALL ME and you will be called.
may-yes = Yes, { $name }: { $task } on { $block } is due now, by { $day }. -{ $adviser }
who = This is the rubber line of { $adviser }. We never ask for money or PIN. Text STOP to end, HELP for words.
my-data = We hold: name, this phone, group { $group }, { $blocks }, your reports. You agreed to texts: { $consent }; to tell buyers: { $sharing }. Wrong? Text CALL ME
consent-none = not yet
share-given = Noted, { $name }: a buyer may be told your name and where your land lies. To take that back text SHARE NO. -{ $adviser }
share-refused = Noted, { $name }: no buyer is told of you or your land. To change that text SHARE YES. -{ $adviser }
share-ask = { $name }, may a buyer be told your name and where your land lies? Now: { $sharing }. Reply SHARE YES or SHARE NO. -{ $adviser }
sharing-yes = yes
sharing-no = no
call-me = { $name }, { $adviser } will call you. If anyone is in danger, get to a safe place first.
call-me-untold = { $name }, I can reach nobody for you now: call by yourself. If anyone is in danger, get to a safe place first.
call-me-notice = Call { $name } ({ $group }), number ends { $digits }: asked on { $day }.
alarm-notice = Please call { $name } ({ $group }) soon, number ends { $digits }: text of { $day } may be about { $alarm }.
alarm-grief = a death
alarm-danger = danger
alarm-illness = illness
alarm-complaint = a complaint
alarm-money = money
alarm-fire = fire
alarm-snake = a snake bite
alarm-number = a new number or a lost phone
matter-notice = { $name } ({ $group }), number ends { $digits }, texted on { $day }: { $alarm }. To read it text NEXT
concern-call-me = please call
concern-question = a question
concern-unclear = not understood
first-fire = Get everybody away from fire and smoke now. Shout for help. Do not fight it alone. { $told }
first-snake = Keep still and get to a clinic at once. Do not cut, suck or tie the bite. { $told }
first-danger = Go to a safe place first and call people near you. { $told }
first-illness = If it is bad, go to a clinic now. Press a clean cloth on a bleeding wound. { $told }
told-adviser = I told { $adviser }.
told-nobody = Nobody could be told: get help near you.
grief = { $name }, I am sorry for your loss. { $told } No reminders until { $adviser } says so.
told = Thank you, { $name }. I told { $adviser }, who can read your text.
not-told = { $name }, I can not answer this and could not tell { $adviser }. Please ask in person.
only-done = Only work that you have done is noted. When it is done text it, like { $example }
sick-notice = { $name } { $block } ({ $group }): { $facts }.
cluster-notice = { $group }: { $ailment } at { $count } places since { $day }. Please look. Then WARN { $group } lets the neighbours look. No spraying yet.
warn-ask = { $group }: { $ailment } at { $count } places. If you have looked, { $blocks ->
    [one] 1 block
   *[other] { $blocks } blocks
  } nearby will be asked to look too. Reply YES { $code }
warn-done = { $blocks ->
    [one] 1 block
   *[other] { $blocks } blocks
  } near { $group } will be asked to look for { $ailment }.
warn-none = No cluster of sickness at { $group } now, or no trees near it. To list: SICK { $group }
girth-notice = { $name } { $block } ({ $group }): girths are about { $months } months behind the usual. Please look.
open-notice = { $name } { $block } ({ $group }): of { $trees } trees measured { $share }% are thick enough to tap. Please look first. Then text me for { $name }: opened and the number.
no-answer = I have no answer to that. { $adviser } can help: text CALL ME. For your next job text WHAT NOW
price-none = I carry no prices, so I will not guess. Ask where rubber is bought, or { $adviser }: text CALL ME. For your next job text WHAT NOW
later = All right, { $name }: { $task } on { $block } again about { $day }. -{ $adviser }
nothing-open = Nothing is waiting for an answer. For your next job text WHAT NOW
done = Thank you, { $name }. Noted as done { $day }: { $task } on { $block }. Wrong? Text NO
erase-ask = This takes your name, number and texts out for good. To do it reply YES { $code }
erased = Done. Your name, number and texts are out. The figures of the land stay, without your name. Old backups keep them until they are deleted.
nothing-held = We hold no name for this number. There is nothing more to take out.
code-wrong = That code is not right. Nothing was done.
code-locked = Too many codes, or wrong ones. Nothing was done; for this no code counts for a day. Was it not you? Tell your office: somebody uses your number.
visit-ask = To write for { $name } and others until this evening reply YES { $code }. Did you not ask for this? Then do not answer, and tell your office.
office-code = { $code } opens the office's pages for the next { $minutes } minutes. Nobody may ask you for it. Did you not want to look? Then tell your office.
stop-ask = No more texts to you, also when a farmer is in danger? Then reply YES { $code }
held-back = You text much. I answer again later. If somebody is in danger call for help.
digest = { $count ->
    [one] 1 more notice
   *[other] { $count } more notices
  } this hour. Please ask them: { $people }

## Jobs in one or two words

job-order_plants = order plants
job-dig_pits = dig pits
job-plant = plant
job-survival_check = count dead trees
job-backfill = fill gaps
job-weed = weed
job-feed = feed
job-prune = prune
job-induce_branching = branch
job-look_at_induced = look for shoots
job-root_check = check roots
job-girth_census = measure girth
job-clear = clear land
job-line = peg rows
job-mulch = mulch
job-firebreak = firebreak
job-count_tall = count tall
job-get_ready = get ready
job-open = open
job-fill_pits = fill pits
job-sow_cover = sow cover
job-leaf_check = check leaves
job-intercrop = food crops
job-open_rest = open the rest
job-rain_watch = tell of rain
job-hand_over = hand over
walk-every = 1 tree in { $every }, start at tree { $from }
walk-all = all rows
pit-edge = { $cm } cm
pit-round = round, { $wide } cm wide, { $deep } deep
datum-ground = { $cm } cm above ground
datum-union = { $cm } cm above the graft
usual = about { $value }
kind-cleared = clearing
kind-lined = pegging
kind-holes_dug = digging
kind-received = delivery
kind-planted = planting
kind-dead = counting
kind-replaced = filling
kind-weeded = weeding
kind-fertilised = feeding
kind-sprayed = spraying
kind-pruned = pruning
kind-branched = branching
kind-not_branched = branching
kind-branch_induction = branching
kind-girth = measuring
kind-height = measuring
kind-disease = checking
kind-damage = checking
kind-cover_sown = sowing
kind-intercrop_sown = sowing
kind-tapping_opened = opening
kind-not_done = work
kind-rain = rain

## Nudges. One job, a date, one reply word.

nudge-order_plants = { $name }, for { $block } order { $trees } budded plants by { $by }. Ask for certified ones. Reply DONE when ordered.{ $how } -{ $adviser }
nudge-dig_pits = { $name }, please dig the pits on { $block } by { $by }: { $trees } pits, { $pit }. Mark open pits, keep children off. Reply PITS and number.{ $how } -{ $adviser }
nudge-plant = { $name }, plant { $block } by { $by } while soil is wet: { $trees } trees. Take the bag off, firm the soil. Reply PLANTED and number.{ $how } -{ $adviser }
nudge-survival_check = { $name }, walk each row of { $block } by { $by }. Of { $trees } trees, how many are dead? Reply DEAD and the number, 0 is fine. -{ $adviser }
nudge-backfill = { $name }, { $block } has { $trees ->
    [one] 1 gap
   *[other] { $trees } gaps
  }. Fill by { $by } while soil is wet, same clone. Reply FILLED and number. -{ $adviser }
nudge-weed = { $name }, please weed the rows of { $block } by { $by }. By hand near stems, blade away from bark and body. Reply WEEDED. -{ $adviser }
nudge-feed = { $name }, feed { $block } by { $by }: { $dose }. Weed first, wet soil, off the stem. Wear gloves. Reply FED. -{ $adviser }
nudge-prune = { $name }, cut side shoots below { $height } m on { $block } by { $by }, while they are small. From the ground, no climbing. Reply PRUNED. -{ $adviser }
nudge-induce_branching = { $name }, { $trees } tall trees on { $block } have no branches. Use only the way you were shown, by { $by }. No climbing. Reply INDUCED and number. -{ $adviser }
nudge-look_at_induced = { $name }, by { $by } look at the trees on { $block } made to branch. Shoots? Take off the tie, or the top dies. Reply BRANCHED and number. -{ $adviser }
nudge-root_check = { $name }, root check on { $block } by { $by }. How many trees have white threads at the foot? Reply ROOT and number, 0 is fine. Do not pull trees. -{ $adviser }
nudge-girth_census = { $name }, measure girth { $datum } on { $block } by { $by }: { $trees } trees, { $walk }, thin ones too. Reply GIRTH and cm.{ $how } -{ $adviser }
nudge-clear = { $name }, are the new plants for { $block } sure? Then cut the old trees by { $by }: trained feller, others 2 tree lengths away, no fire. Reply DONE. -{ $adviser }
nudge-line = { $name }, peg level rows on { $block } by { $by }; on a slope go across, not down: about { $trees } pegs. Reply DONE when pegged. -{ $adviser }
nudge-mulch = { $name }, the dry season comes. Put dry grass round the trees on { $block } by { $by }, { $gap } cm off the stems, and shade weak ones. Reply DONE. -{ $adviser }
nudge-firebreak = { $name }, clear a strip of { $width } m round { $block } against fire by { $by }. Cut the weeds, do not burn, blade away from body. Reply DONE. -{ $adviser }
nudge-count_tall = { $name }, count on { $block } by { $by } the trees over { $height } m without branches. Reply NOT BRANCHED and number, 0 is fine. -{ $adviser }
nudge-get_ready = { $name }, { $block } may be ready to tap within a year. Ask { $adviser } for tapping school by { $by }. Buy nothing, tap nothing yet. Reply DONE.
nudge-open = { $name }, { $block } meets the rule: { $share }% of trees are { $girth } cm round. { $adviser } looks before you open, by { $by }. Open marked trees only.
nudge-open-usual = { $name }, on { $block } { $share }% of trees are { $girth } cm round. { $adviser } looks before you open, by { $by }. Open marked trees only.
nudge-fill_pits = { $name }, fill the pits of { $block } by { $by }: topsoil first, then a peg in the middle. Keep children off open pits. Reply DONE.{ $how } -{ $adviser }
nudge-sow_cover = { $name }, sow the ground cover between the rows of { $block } by { $by }, in wet soil, away from pegs and stems. Reply DONE. -{ $adviser }
nudge-leaf_check = { $name }, look at the leaves on { $block } by { $by }. Reply LEAF SPOT or LEAF FALL and number of trees, DONE if well. Do not spray. -{ $adviser }
field-round = { $name }, round on { $block } by { $by }: { $jobs }. Blade off body, no climbing, pulling, spraying. Reply DONE or what you saw. -{ $adviser }
round-done = Thank you, { $name }. Round on { $block } noted as done { $day }, nothing sick seen. Wrong? Text NO
walk-then = { ", " }
walk-weeds = weeds
walk-shoots = shoots
walk-roots = roots
walk-leaves = leaves
walk-crops = crops
nudge-near = { $name }, { $ailment } was seen near you. Look at { $block } by { $by }. Reply { $ailment } and number, 0 if none. Do not pull or spray. -{ $adviser }
nudge-intercrop = { $name }, food crops on { $block }? Keep them { $distance } m away from the trees. By { $by } reply CROP and its name, DONE if none. -{ $adviser }
nudge-intercrop-steep = { $name }, { $block } is steep: better no food crops between the rows, a cover holds the soil. By { $by } reply CROP and its name, DONE if none. -{ $adviser }
nudge-open_rest = { $name }, { $trees } trees on { $block } were too thin. Measure { $datum } by { $by }. { $adviser } looks before you open more. Reply GIRTH and the cm.
nudge-rain_watch = { $name }, has rain soaked the ground at { $block } since { $since }? Reply RAIN YES or RAIN NO. It tells us when to plant. -{ $adviser }
nudge-hand_over = Well done, { $name }. { $block } is a tapping plot now, so these reminders end. Your record stays. For help text CALL ME. -{ $adviser }

## The adviser asks

waiting-list = Waiting { $count }, oldest { $hours }h: { $people }. To read one text NEXT
waiting-none = No text waits for you.
waiting-person = { $concern } { $count } ({ $name } { $hours }h)
waiting-next = { $name } ({ $group }) { $digits }, { $hours }h, { $concern }. Seen to? DONE: { $text }
waiting-next-store = { $name } ({ $group }) { $digits }, { $hours }h. Store { $block }: { $facts }? Reply 1. Seen to? DONE: { $text }
waiting-next-choose = { $name } ({ $group }) { $digits }, { $hours }h. Store { $readings }? Reply its number. Seen to? DONE: { $text }
waiting-reading = { $number } { $block } { $facts }
waiting-next-number = { $name } ({ $group }) { $digits }, { $hours }h. Lost? LOST { $name }. New? MOVED { $name } and number. Seen to? DONE: { $text }
waiting-closed = Closed: { $name }. Waiting now: { $count }.
waiting-old = { $count ->
    [one] 1 text waits
   *[other] { $count } texts wait
  } over { $hours }h, first { $name } ({ $group }). To read text NEXT
held = No reminders to { $name } until you text GO { $name }
held-until = No reminders to { $name } until { $day }. To end it sooner text GO { $name }
gone-on = { $name } is reminded again.
not-held = { $name } gets reminders, nothing to end.

## A text or a group goes to a colleague
pass-whom = To whom? These can take it: { $people }
pass-nobody = Nobody else is on the list who could take it.
pass-none = No text was read just now. To read one text NEXT
passed = Passed to { $adviser }: the text of { $name }. Waiting now: { $count }
passed-notice = { $adviser } passes a text of { $name } ({ $group }) to you. To read it text NEXT
hand-ask = { $name } looks after { $groups } from now on: farmers { $farmers }, texts waiting { $waiting }, promised { $owed }, sick { $sick }? Reply YES { $code }
handed = { $name } looks after { $groups } now and is told: farmers { $farmers }, texts waiting { $waiting }, promised { $owed }, sick { $sick }.
handed-notice = { $adviser } hands { $groups } over to you: farmers { $farmers }, texts waiting { $waiting }, promised { $owed }, sick { $sick }. Text WAITING, WEEK, SICK

## What an adviser owes to whom
promised = Noted as { $number }, by { $day }: { $text }. When it is done text KEPT { $number }
promise-kept = Done: { $text }. Still promised: { $count }
promise-none = Nothing of that kind is promised. To see what is text WEEK
promise-full = { $count } promises are open. Please close some first: WEEK
owed = { $number } { $text } ({ $day })
owed-call = call { $name } ({ $day })

## An adviser's own words to a group or a person
announce-ask = { $phones ->
    [one] { $phones } phone
   *[other] { $phones } phones
  }, 1 message each{ $cost }, { $when }{ $left }. Send? Reply YES { $code }. Text: { $text }
announce-cost = , cost { $cost }
announce-now = at once
announce-later = { $day } from { $time }
announce-left = ; { $count } get none (rest, STOP)
announced = On its way to { $phones ->
    [one] { $phones } phone
   *[other] { $phones } phones
  }, { $when }{ $left }.
announcement = { $text } -{ $adviser }
announce-nobody = Nobody of { $name } can be texted now: at rest, STOP or no phone. Nothing was sent.
announce-long = Too long for one message by { $count } letters. Nothing was sent.
announce-empty = What shall I say? Text TELL { $name } and behind it your words.

## A phone is lost or found, a number is another one
phone-lost-ask = Phone of { $people }, ends { $digits }, lost? It then gets no texts and changes nothing. Reply YES { $code }
phone-lost = Held: phone of { $people }, ends { $digits }. Found again: FOUND { $name }. New number: MOVED { $name } and the number.
phone-lost-adviser = Held: phone of { $people }, ends { $digits }. The new number comes with the list of the office.
phone-found-ask = Phone of { $people }, ends { $digits }, back in the right hands? Reply YES { $code }
phone-found = Phone of { $people }, ends { $digits }, counts again.
phone-none = { $name } has no other phone on the list that this could be about.
phone-is-lost = This phone is marked as lost: nothing is told, nothing is changed. Your text is kept for a person. Not lost? See your adviser.
number-ask = { $name } has the number { $number } from now on? The old one ({ $digits }) loses all rights. Reply YES { $code }
number-moved = { $name } has the number that ends { $digits } now. What any old number texts counts no more.
number-own = Your own new number comes with your office's list, not by text. A lost phone of yours: LOST and your name, from another phone.
number-unread = No mobile number of this country. Nothing was done. Text MOVED { $name } and the whole number.
number-taken = The number that ends { $digits } is on the list for somebody else. Nothing was done. Is it shared? Your office puts that on the list.
number-code = { $code } is the code of { $name } for this number on the rubber line. Text it from the old phone. Not for you? Then do not answer.
number-code-sent = A code went to the number that ends { $digits }. Text it from this phone: then that number is yours here, and this one counts no more.

## Land and people pass from one to another
owner-ask = { $block } of { $old } ({ $trees } trees) is { $name }'s from now on, with all that was told of it? Reply YES { $code }
owner-changed = { $block } is { $name }'s now, with { $trees } trees. { $old } gets no more texts about it.
owner-told-new = { $name }, { $block } of { $old } is on the list as yours now, { $trees } trees. Not so? Text CALL ME. -{ $adviser }
owner-told-old = { $name }, { $block } is on the list of somebody else now: no more texts about it. Not so? Text CALL ME. -{ $adviser }
owner-which = Whose block goes to whom? Text NEW OWNER, the old owner, the block, the new owner. Both must be on your list.
part-ask = { $trees } of the { $alive } trees on { $block } of { $old } are a block of { $name } from now on? Reply YES { $code }
part-made = { $name } has { $block } now, { $trees } trees; { $alive } stay with { $old }. The area was divided like the trees: please check it.
part-told = { $name }, { $trees } trees of { $block } are on the list of somebody else now. Not so? Text CALL ME. -{ $adviser }
part-which = How many trees go to whom? Text SPLIT, the owner, the block, the new owner and how many living trees: not all of them.
join-ask = { $name } with { $number } comes to { $group }? No reminders go there before START comes from it. Reply YES { $code }
join-ask-known = { $name } comes to { $group }, with all land and all that was told? Reply YES { $code }
joined = { $name } is in { $group } now. Who is new gets no reminders yet: they begin with START from that phone.
join-which = Who comes to which group? Text NEW MEMBER, the group, the name and the whole number.
leave-ask = { $name } leaves { $group }? No more reminders; what was told is kept. Reply YES { $code }
left = { $name } is in no group now and gets no reminders. What was told is kept. Back again? Text NEW MEMBER, group, name, number.
left-told = { $name }, you are no more on the list of { $group } and get no reminders. Not so? Ask { $adviser }.
leave-which = Who leaves? Text LEAVES GROUP and the name.
helper-ask = { $text } with { $number } does the work of { $name } and gets the texts, after a yes from there? Reply YES { $code }
helper-asked = { $text } was asked on the number that ends { $digits }. Texts for { $name } go there after a yes.
helper-invite = { $text }: may { $adviser } send texts about the land of { $name } to this phone? Reply YES or NO. We never ask for money or PIN.
helper-agreed = Thank you, { $text }. Texts for { $name } come here now, and what you report counts. To end it: STOP
helper-ended = Done, { $text }. No more texts for { $name } come to this phone.
helper-notice = { $text } agreed: texts for { $name } go to the number that ends { $digits } now.
helper-which = Who does the work for whom? Text SECOND PHONE, the name on your list, the other name and the whole number.

status = { $group } { $day }: { $farmers ->
    [one] 1 farmer
   *[other] { $farmers } farmers
  }, { $planted } planted, alive { $alive }. { $due }{ $late }{ $check }Quiet { $quiet }, sick { $sick }{ $peace }
status-due = Due: { $tasks }. { "" }
status-due-none = Nothing due. { "" }
status-late = Late: { $tasks }. { "" }
status-late-none = None late. { "" }
status-check = To check for opening { $count }. { "" }
left-in-peace = . Left in peace { $count }
feed-lost = . Feed rounds lost in { $days } days: { $count }, see { $name }
alive-pct = { $pct }%
alive-pct-visited = { $pct }% ({ $visited }% by visit)
alive-unknown = not counted
task-count = { $task } { $count }
more = +{ $count }
more-jobs = { $count } more
more-none = That was all of it.
# Of all groups, a line each.
status-all = { $groups }
status-line = { $group } alive { $alive } late { $late } quiet { $quiet } sick { $sick }
late-all = Late: { $groups }
gaps-all = Gaps: { $groups }
sick-all = Sick: { $groups }
group-count = { $group } { $count }
group-first = { $group } { $count } ({ $first })
gaps-order = { $order ->
    [0] too late to fill
   *[other] order { $order }
  }
late-list = Late { $group }: { $people }{ $peace }{ $lost }
late-none = None late at { $group }{ $peace }{ $lost }.
late-person = { $name } { $task } { $days }d
late-person-told = { $name } { $task } { $days }d reminded 3x
quiet-list = Quiet over { $limit }d: { $people }{ $why }
quiet-none = Nobody is quiet over { $limit } days{ $why }.
quiet-person = { $name } { $days }d
quiet-person-never = { $name } never
gaps-list = Gaps { $group }: { $gaps } at { $farmers ->
    [one] 1 farmer
   *[other] { $farmers } farmers
  }, { $order ->
    [0] too late to fill
   *[other] order { $order } with loss
  }. { $people }
gaps-none = No gaps known at { $group }. { $uncounted } blocks not counted yet.
gaps-person = { $name } { $gaps }
sick-list = Sick { $group }: { $people }
sick-list-cluster = Sick { $group }: { $ailment } at { $count } places since { $day }, look first. { $people }
sick-none = No sickness told at { $group } in { $limit } days.
sick-person = { $name } { $ailment } { $count }
visit-list = Visit first: { $people }{ $peace }
visit-none = Nobody needs a visit now{ $peace }.
visit-cluster = { $name } { $ailment } at { $count } places
visit-lost = { $name } { $pct }% trees dead
visit-quiet = { $name } quiet { $days }d
visit-ending = { $name } { $task } { $days }d left
feed-group = Feed { $group } now: { $farmers ->
    [one] 1 farmer
   *[other] { $farmers } farmers
  }, { $trees } trees, { $kilograms } kg. Bags of 50 kg: together { $pooled }, each alone { $alone }. { $people }
girth-list = Girth { $group }: { $people }
girth-none = No girths are known at { $group } yet.
feed-none = No feeding is due at { $group }.
member = { $name } ({ $group }): { $blocks }. Last text { $day }
member-told = { $name } ({ $group }): { $blocks }. Last news { $day }, no text yet
member-never = { $name } ({ $group }): { $blocks }. No text yet
member-block = { $block } { $living } alive, planted { $day }{ $due }
member-block-empty = { $block } { $area }, not planted{ $due }
member-due = , { $task } { $day }
member-girth = , girth { $mean } cm ({ $of }), { $against }{ $ready }
member-behind = { $months } months behind
member-ahead = { $months } months ahead
member-ready = , to tap { $earliest }-{ $latest }
member-no-blocks = no block
member-which = Which one? { $people }
window-ask = Open planting at { $group } from { $day }? { $rain }{ $farmers ->
    [one] 1 farmer
   *[other] { $farmers } farmers
  } will be told. Reply YES { $code }
window-opened = Planting at { $group } is open from { $day }. { $farmers ->
    [one] 1 farmer
   *[other] { $farmers } farmers
  } will be told.
rain-open = Rain 10d: ground soaked at { $soaked } of { $reporters }, looks right to open. { "" }
rain-hold = Rain 10d: { $soaked } of { $reporters } soaked, hold. { "" }
rain-few = Rain 10d: only { $reporters } answered. { "" }
rain-begun-notice = { $group }: { $soaked } of { $reporters } tell of soaking rain since { $day }. A dry spell may still come. To open planting text WINDOW { $group }
rain-stopped-notice = { $group }: no soaking rain since { $day }, perhaps a false start. Keep planting closed; plants in bags need shade and water.
rain-stopped-notice-open = { $group }: no soaking rain since { $day }, perhaps a false start. To stop planting for now text HOLD PLANTING { $group }
hold-none = Planting at { $group } is not open, so there is nothing to hold.
hold-ask = Hold planting at { $group }? Reminders to plant stop until you open it again ({ $farmers } farmers). Reply YES { $code }
planting-held = Planting at { $group } is held from { $day }. To open it again text WINDOW { $group }
not-your-group = Which group or farmer? Yours: { $groups }

## For the operator: how the service is

operator-well = All is well. { $state }
operator-trouble = Please look after the text service: { $troubles }. { $state }
operator-state = Last text in { $hours }h ago. Waiting to leave: { $waiting }. Parts this month: { $parts }{ $share }.
operator-state-silent = No text came in yet. Waiting to leave: { $waiting }. Parts this month: { $parts }{ $share }.
operator-share = , { $pct }% of the budget
operator-refused = { $gateway } takes no texts
operator-down = { $gateway } has no line
operator-says = look at the SIM of { $gateway }
operator-silent = nothing came in by { $gateway } for { $hours }h
operator-machine = The phone that ends { $digits } texts like a machine, and gets fewer answers. Please ask whose it is and what it runs.
operator-oldest = a text has waited { $hours }h to leave
operator-disk = the disk is nearly full
operator-spent = this month's budget is gone
operator-budget = { $pct }% of this month's budget is gone, { $parts } parts. { $stops }
operator-stops-none = Nothing stops yet.
operator-stops-some = No answers to strangers now. Reminders stop at 90 and 95%, answers at 100%.
operator-stops-all = Until it ends only codes, STOP, first help and notices go.

## The adviser asks more. A fact is known by a visit, a list, a leader, or an own text: a letter each.

source-visit = V
source-sheet = S
source-leader = L
source-text = T
untold = not told
quiet-failing = { $person } phone fails
quiet-resting = . At rest { $count }
quiet-idle = . Nothing due { $count }
dead-all = Dead: { $groups }
dead-line = { $group } { $dead } of { $planted }
dead-list = Dead { $group }: { $dead } of { $planted } ({ $pct }%). { $people }{ $uncounted }
dead-person = { $name } { $pct }% { $source }
dead-uncounted = . Not counted { $count }
dead-parts = Dead { $group }: { $dead } of { $planted } ({ $pct }%). { $parts }
dead-part = { $what } { $count }
clone-all = Clones: { $groups }
clone-list = Clones { $group }: { $clones }
clone-none = No trees are planted at { $group } yet.
clone-share = { $clone } { $pct }% ({ $dead } of { $planted } dead)
order-all = Order: { $groups }
order-list = Order { $group }: { $plants } plants, { $farmers ->
    [one] 1 farmer
   *[other] { $farmers } farmers
  }, { $land }. Firm { $firm }, wished { $wished }{ $by }. { $parts }
order-none = Nobody at { $group } has a day of planting ahead.
order-part = { $clone } { $plants } { $day }
order-by = , order by { $day }
order-firm = firm { $firm }
feed-all = Bags: { $groups }
feed-share = { $name } { $kilograms } kg
work-all = { $task }: { $groups }
work-line = { $group } done { $done } due { $due } late { $late }
work-round = { $group } { $task }: done { $done }, due { $due }, late { $late }. { $people }
root-all = Roots: { $groups }
root-round = Roots { $group }: looked { $done }, due { $due }, late { $late }. { $found }
root-none = No white root told.
fire-all = Firebreak: { $groups }
fire-round = Firebreak { $group }: done { $done }, due { $due }, late { $late }. Burnt: { $found }
fire-none = none told
wind-all = Trees hurt by wind: { $groups }
wind-list = Wind { $group }, { $days }d: { $farmers } of { $of } told, { $trees } trees. { $people }
wind-none = No wind damage told at { $group } in { $days } days.
harm-all = Trees hurt: { $groups }
harm-list = { $group }, { $cause } damage in { $days }d: { $farmers } of { $of } told, { $trees } trees. { $people }
harm-none = No { $cause } damage told at { $group } in { $days } days.
harm-ask = Ask about { $cause } at { $group }: { $phones ->
    [one] { $phones } phone
   *[other] { $phones } phones
  }, 1 message each? Reply YES { $code }
harm-sent = { $phones ->
    [one] { $phones } phone
   *[other] { $phones } phones
  } of { $group } will be asked about { $cause }. To see the answers ask me for { $cause } { $group }
harm-question = { $name }, { $cause } at { $group }? How many of your trees are hurt? Look only where it is safe. Reply { $cause } and the number, 0 if none. -{ $adviser }
harm-asked = { $group }, { $cause }, asked { $day }: { $answered } of { $of } answered, { $hurt } lost { $trees } trees. { $people }
harm-asked-none = { $group }, { $cause }, asked { $day }: all { $of } answered, no trees are hurt.
harm-silent = { $name } no answer
leaders-ask = Ask { $leaders ->
    [one] 1 leader
   *[other] { $leaders } leaders
  } about { $people }? Reply YES { $code }
leaders-none = Nobody is silent of whom a leader could be asked.
leaders-asked = { $leaders ->
    [one] 1 leader is
   *[other] { $leaders } leaders are
  } asked.
leader-asked = { $name }, nothing was heard of { $people } for { $limit } days. Are they well? Text what they did, or CALL ME. -{ $adviser }
girth-all = Blocks measured: { $groups }
girth-one = { $name } { $block } { $day } { $source }: { $trees } trees, mean { $mean } cm, spread { $spread }%, smallest { $smallest }. { $against }
girth-share = { $name } { $block } { $day } { $source }: { $count } of { $of } trees thick enough
girth-unknown = No girths of { $name } are known yet.
ready-one = { $name } { $block }: to tap about { $likely }, range { $earliest } to { $latest }, from { $trees } trees
ready-close = { $name } { $block }: close, measure and look before opening{ $more }
ready-trees = . To tap { $trees }{ $hectare }: { $pct }% of living{ $places }{ $spread }{ $runts }
ready-hectare = , { $trees } a hectare
ready-places = , { $pct }% of places
ready-spread = . Spread { $spread }%
ready-runts = , runts { $pct }%: weeds, shade, roots?
ready-early = { $name } { $block }: too early to say from { $trees } trees
ready-unknown = { $name } { $block }: no girths yet
ready-opened = { $name } { $block }: is tapped
ready-group = To tap { $group }: { $years }. Look now { $now }, too early { $early }, no girths { $unknown }
ready-year = { $year } { $stands } ({ $land })
ready-no-year = no year yet
ready-now = Look before opening: { $people }
ready-now-none = No stand is close to opening.
ready-person = { $name } { $block } { $pct }% of { $of } trees ({ $low }-{ $high }%)
map-all = Blocks: { $groups }
map-list = Map { $group }: { $blocks } blocks. No point { $point }, no size { $area }, over { $limit } and so in need of an outline { $large }. Buyers: yes { $shared }, no { $kept }
map-point = no point { $count }
rain-all = Rain 10d: { $groups }
rain-line-open = { $group } { $soaked } of { $reporters } soaked: looks open
rain-line-hold = { $group } { $soaked } of { $reporters } soaked: hold
rain-line-few = { $group } only { $reporters } told
best = Alive: { $alive }. Most gaps: { $gaps }. Most quiet: { $quiet }
cost = Texts this month, whole service: { $parts } parts{ $money }{ $share }. Phones that fail: { $failing }
cost-money = , cost { $cost }
week = Your week: visits made { $made }, to visit { $left }, texts waiting { $waiting }{ $deadline }
week-owed = Your week: visits made { $made }, to visit { $left }, texts waiting { $waiting }{ $deadline }. Promised: { $promises }
week-order = . Order plants by { $day }
last-list = { $name }: { $facts }
last-fact = { $day } { $source }{ $block } { $what }
last-none = Nothing is told of { $name } yet.
labour = { $name }, next { $days } days: { $jobs }. How long it takes is not on record.
labour-job = { $task } { $block } { $day }
labour-job-days = { $task } { $block } { $day } { $effort }d
labour-days = { $name }, next { $days } days: { $jobs }. One person needs { $effort } working days{ $busy }
labour-busy = . Busy { $from } to { $to }
labour-none = { $name } has no job in the next { $days } days.
whose = Ends { $digits }: { $people }. { $last }
whose-person = { $name } ({ $group }), agreed { $consent }{ $other }
whose-other = , also { $digits }
whose-last = Last text { $day }
whose-never = No text yet
whose-none = None of your farmers has a number that ends { $digits }.
paid-none = { $group }: { $held } paid. No feed is due or no price is told. Text BUYING DAY { $group }, the price of a bag and the day.
paid-all = Feed money: { $groups }
paid-line = { $group } { $held } of { $total }
paid-list = Feed money { $group }: { $paid } of { $of } paid, { $held } of { $total }. To pay: { $people }{ $buying }
paid-whole = Feed money { $group }: all { $of } paid, { $held } of { $total }{ $buying }
paid-person = { $name } { $cents }
paid-entered = Noted as paid in all: { $people }. Wrong? Send it again with the right sum.
paid-told = { $name }, { $leader } noted { $cents } paid by you for feed. Not so? Text CALL ME. -{ $adviser }
paid-which = Who paid how much in all? Text PAID, the name, the sum.
buying-on = { ". " }Buying { $day }
buying-set = { $group } buys feed { $day }: { $bags } bags x { $price } = { $total }. Each: { $people }{ $left }
buying-left = { ". " }Left over { $kilograms } kg
buying-none = { $group } buys feed { $day }, { $price } a bag. No feed is due now.
buying-which = Text BUYING DAY, the group, the price of a bag and a day to come.
grant-none = No part payments stand in the calendar of your groups: ask the office.
grant-list = Part { $part } { $group }, { $stand }/ha at { $months } months: pass { $pass }, short { $short }, no visit in { $days }d { $unseen }, too young { $young }. { $people }
grant-whole = Part { $part } { $group }, { $stand }/ha at { $months } months: pass { $pass }, too young { $young }. Nothing is open.
grant-short = { $name } { $trees } short
grant-unseen = { $name } no visit
grant-no-size = { $name } no size
grant-all = Part payments: { $groups }
grant-line = { $group } part { $part } pass { $pass } short { $short } no visit { $unseen }
train-none = { $group }: no training is noted. Text TRAINED, the work and who came.
train-none-of = { $group }: no training is noted for { $work }.
train-waits = { $group } { $work }: due, but never shown to { $people }. No reminder goes to them. { $came } of { $of } were shown.
train-all = Training: { $groups }
train-list = { $work } { $group } { $day }: { $came } of { $of } came. Missed: { $people }
train-whole = { $work } { $group } { $day }: all { $of } were shown.
train-topics = Shown { $group }: { $topics }
train-topic = { $work } { $day } { $came } of { $of }
train-entered = Noted, { $work } { $day }, { $count } came: { $people }
train-which = Which work was shown? Text TRAINED, the work and the names.
list-all = Missing: { $groups }
list-group = { $group }, { $days } days: { $told } of { $of } told. Missing: { $people }
list-none = { $group }: nobody is missing. Work is due for { $of }, with news in { $days } days.
list-person = { $name } { $task }
allot-all = Plants: { $groups }
allot-list = Plants { $group }: { $people }
allot-none = { $group }: no plants in stock and none firmly ordered.
allot-clone = { $clone } { $plants } in stock{ $ready }, { $ordered } ordered
allot-line = { $group } { $people }
allot-ready = { " " }from { $day }
allot-share = { $name } { $clone } { $plants }
stock-which = How many plants, of which clone, ready when? Text STOCK, the clone, the number, the day.

# Short lessons: five texts for each piece of work. A figure has its source in scheduler/src/handbook/lesson.rs.
lesson-step = { $step }/{ $of } { $text } Next: MORE
lesson-end = { $step }/{ $of } { $text }
lesson-plants-1 = Take budded plants of a clone that your adviser names, with the nursery's label. Seedlings that nobody budded give less rubber.
lesson-plants-2 = Look for two whorls of leaves, both hard and dark green. Soft young leaves wilt on the way.
lesson-plants-3 = The shoot comes out of the bud patch, the graft is closed, the stem is straight. A shoot from below it is the old stock.
lesson-plants-4 = The soil in the bag is whole and wet, and few roots come out of it. Leave broken and dry ones at the nursery.
lesson-plants-5 = Count together with the driver. Carry by the bag, never by the stem. Shade and water them until they are planted.
lesson-stumps-1 = Bare stumps dry out fast: plant them as soon as you can. Until then keep them in the shade, in wet sacks.
lesson-stumps-2 = Good ones have one straight taproot and a green bud patch. Many leave out those with a forked or bent root.
lesson-stumps-3 = Shorten side roots to 7.5-10 cm. Cut away from your body, others keep their distance.
lesson-stumps-4 = In the filled pit make a hole with a stick, as deep as the root. Its end must not bend up.
lesson-stumps-5 = Set it so that the bud patch is 2-3 cm above the soil. Press the soil on from below to the top, then water.
lesson-pits-1 = Dig on the pegs, about a month before planting. Topsoil goes on one side, subsoil on the other.
lesson-pits-2 = An open pit is a trap: mark it, and keep children and animals away until it is filled.
lesson-pits-3 = Fill it about 10 days before planting: the topsoil goes in first.
lesson-pits-4 = Ripe compost goes into the upper 30 cm, if you have some. Fertiliser only as your adviser says, with gloves.
lesson-pits-5 = Heap the soil a little, for it sinks. Put the peg back in the middle: there the plant goes.
lesson-planting-1 = Water the bags on the day before. Do not plant while the top leaves are still soft.
lesson-planting-2 = Make room in the pit as deep as the bag. Cut off the bottom of the bag with the roots there. Blade away from you.
lesson-planting-3 = Set it straight, bud patch just above the soil and turned away from morning and evening sun.
lesson-planting-4 = Pull the bag up and off; the soil inside must not break. Fill in and press from the sides, not on top of it.
lesson-planting-5 = Water it. Mulch around it, not touching the stem. Take all bags home. Bare stumps are planted otherwise.
lesson-shoots-1 = Shoots from below the graft are the old stock and not your clone: rub them off on each walk.
lesson-shoots-2 = Above it take off side shoots up to the height where branches are wanted. Your adviser names it.
lesson-shoots-3 = Take them while they are soft and short: your fingers are enough, and the wound stays small.
lesson-shoots-4 = A thick one gets a clean cut close to the stem; never tear it. Blade away from you, others keep away.
lesson-shoots-5 = Leave the top bud and its leaves. Cut in the rains, not in the dry season. No climbing: what is too high waits.
lesson-branching-1 = It is for trees without branches at 2.5-3 m above the graft. Some clones branch by themselves, later: ask first.
lesson-branching-2 = Time: 1.5 to 2 years old, in the rains, top leaves hard. Many leave out dry months, windy places and bent trees.
lesson-branching-3 = Fold the leaves of the top ripe whorl over the tip and tie them, or clip them to 3-4 leaflets. Only as you were shown.
lesson-branching-4 = Stay on the ground: do not climb, do not bend the stem. What is too high for your hands waits for your adviser.
lesson-branching-5 = Look after 2 to 3 weeks. As soon as shoots start take off the tie, or the top dies. Then text BRANCHED and the number.
lesson-girth-1 = Take a tape, or a string and a stick with marks. With a mark on the string at the girth that counts one look is enough.
lesson-girth-2 = Measure each tree at the same height, the one that I text you. A stick of that length saves time.
lesson-girth-3 = Around the stem, level and snug, not over a wound or a knot. Never stretch the string.
lesson-girth-4 = Choose trees by counting, thin ones too. Who chooses by eye takes the best, and believes too much.
lesson-girth-5 = Write each girth down, then text them all, like GIRTH 41 43 39. I tell you whether they are enough.
nudge-how = { " " }How? Text HOW.

stopped-shared = Done. No more reminders to this number, for { $people }. Records are kept. Text START to return, ERASE to take your name out.
complaint-told = Sorry, { $name }. Noted as no. { $number }: { $adviser } is told and answers by { $day }.
stand-short = { $short } of { $ordered } are still to come. { $handle } { "" }
stand-arrived = { $handle } { "" }
handle-bag = Shade, water, carry by the bag.
handle-stump = Wet sacks, shade, plant at once.
handle-any = Shade and water them.
pick-up-set = { $group }, pick-up { $day }, told to { $count }: { $people }
pick-up-told = { $name }, { $plants } plants are for you on { $day }. Bring a cart and shade. Count them, then text: got and the number. -{ $adviser }
pick-up-none = { $group }: nothing to pick up. Plants in stock and firm orders are needed first: STOCK.
pick-up-which = On which day to come? Text PICK UP DAY, the group and the day.
order-pick-up = { $name }, plants are given out on { $day }, { $plants } for you. Did they not come? Tell me. -{ $adviser }
