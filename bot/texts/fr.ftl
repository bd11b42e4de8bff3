# French. From memory; needs a native reader who knows rubber.
# Every text fits one SMS of 160 GSM characters at its longest values; a test says so.
# Letters: é, è, à and ù are in the GSM alphabet and stay; ç, ê, î, ô, û and œ are not, and would
# more than halve an SMS, so they are written c, e, i, o, u and oe, as people do in texts.
# Words to reply with are in capitals without accents. Plurals: 0 and 1 are singular (CLDR).

## Numbers and languages

decimal = ,
years-ahead = 0
language-name = Francais
language-called = francais, french, perancis, prancis, frances, phap, tieng phap, farangset, ฝรั่งเศส, ภาษาฝรั่งเศส
languages = Langues: { $languages }. Répondez LANGUE et la langue, comme LANGUE fr
language-set = A partir de maintenant j'écris en francais.

## Days

weekday-1 = lun
weekday-2 = mar
weekday-3 = mer
weekday-4 = jeu
weekday-5 = ven
weekday-6 = sam
weekday-7 = dim
month-1 = janv
month-2 = févr
month-3 = mars
month-4 = avr
month-5 = mai
month-6 = juin
month-7 = juil
month-8 = aout
month-9 = sept
month-10 = oct
month-11 = nov
month-12 = déc
day = { $weekday } { $day } { $month }
day-year = { $day } { $month } { $year }
month-year = { $month } { $year }
span = { $from } au { $to }

## What was stored, read back

read-back = { $block }: { $facts }. { $stand }Erreur? Envoyez NON
read-back-rain = { $facts }. Merci. Erreur? Envoyez NON
clause-on = { $clause } { $day }
said-cleared = terrain défriché
said-lined = piquetage fait
said-lined-count = { $count ->
    [one] { $count } piquet
   *[other] { $count } piquets
  }
said-holes-dug = { $count ->
    [one] { $count } trou creusé
   *[other] { $count } trous creusés
  }
said-received-plants = { $count ->
    [one] { $count } plant recu
   *[other] { $count } plants recus
  }
said-received-plants-uncounted = plants recus
said-received-fertiliser = engrais recu{ $amount }
said-received = livraison recue
said-planted = { $count ->
    [one] { $count } planté
   *[other] { $count } plantés
  }
said-dead = { $count ->
    [one] { $count } mort de plus
   *[other] { $count } morts de plus
  }
said-dead-none = aucun mort
said-replaced = { $count ->
    [one] { $count } remplacé
   *[other] { $count } remplacés
  }
said-weeded = sarclage fait
said-fertilised = engrais mis{ $amount }
said-sprayed = traitement fait
said-pruned = gourmands coupés
said-branched = { $count ->
    [one] { $count } arbre ramifié
   *[other] { $count } arbres ramifiés
  }
said-branched-uncounted = arbres ramifiés
said-not-branched = { $count ->
    [one] { $count } arbre pas ramifié
   *[other] { $count } arbres pas ramifiés
  }
said-not-branched-uncounted = arbres pas ramifiés
said-branch-induction = { $count ->
    [one] induction sur { $count } arbre
   *[other] induction sur { $count } arbres
  }
said-branch-induction-uncounted = induction des branches
said-girth = tour de { $number ->
    [one] { $number } arbre
   *[other] { $number } arbres
  }, moyenne { $mean } cm
said-girth-share = tour: { $count } sur { $of } assez gros
said-height = hauteur de { $number ->
    [one] { $number } arbre
   *[other] { $number } arbres
  }, moyenne { $mean } cm
said-disease = vu: { $ailment }
said-disease-count = { $ailment } sur { $count ->
    [one] { $count } arbre
   *[other] { $count } arbres
  }
said-disease-none = aucun arbre malade
said-damage = dégats: { $cause }
said-damage-count = dégats ({ $cause }) sur { $count ->
    [one] { $count } arbre
   *[other] { $count } arbres
  }
said-damage-none = aucun dégat
said-cover-sown = plante de couverture semée
said-intercrop-sown = culture semée: { $species }
said-intercrop-sown-unnamed = culture vivrière semée
said-tapping-opened = { $count ->
    [one] { $count } arbre ouvert
   *[other] { $count } arbres ouverts
  }
said-not-done = pas encore fait: { $job }
said-not-done-unnamed = pas encore fait
said-rain-soaked = bonne pluie
said-rain-none = pas de pluie
said-rain-mm = { $mm } mm de pluie
amount = , { $value } { $unit }

## How the block stands after it

stand-planted = { $total } en tout. { "" }
stand-room = { $total } en tout, place pour { $room } de plus. { "" }
stand-dead = { $dead } en tout, { $alive } vivants sur { $planted }. { "" }
stand-alive = { $alive } vivants sur { $planted }. { "" }
stand-filled = { $alive ->
    [one] { $alive } arbre
   *[other] { $alive } arbres
  } maintenant, encore { $gaps ->
    [one] { $gaps } vide
   *[other] { $gaps } vides
  }. { "" }
stand-next = Prochaine fois vers { $day }. { "" }
stand-ready = Pret sans doute { $earliest } à { $latest }. { "" }
stand-meets = Cela suffit. { $adviser } regarde avant l'ouverture. { "" }
stand-close = Proche: mesurez tous les arbres avant d'ouvrir. { "" }
stand-look = Regardez les pousses dès { $day }. { "" }
stand-sick = { $adviser } le sait. N'arrachez rien, ne traitez pas. { "" }
stand-harm = { $adviser } le sait. Loin des branches cassées. { "" }
stand-label = Suivez l'étiquette. Lavez-vous les mains. { "" }

unit-ha = ha
unit-acre = acres
unit-rai = rai
unit-m2 = m2
unit-kg = kg
unit-g = g
unit-bag = sacs
unit-tin = boites
unit-cup = tasses
unit-l = l
unit-m = m
unit-cm = cm
unit-mm = mm
unit-inch = pouces
unit-foot = pieds

ailment-white_root = fomès (racine blanche)
ailment-leaf_fall = chute des feuilles
ailment-pink = maladie rose
ailment-leaf_spot = taches des feuilles
ailment-mildew = oidium
ailment-dieback = dessèchement
ailment-termites = termites
ailment-other = maladie

cause-wind = vent
cause-fire = feu
cause-flood = inondation
cause-drought = sécheresse
cause-animals = animaux
cause-theft = vol
cause-termites = termites
cause-other = autres

## Correcting

changed = Changé, { $block }: { $facts }. { $stand }Erreur? Envoyez NON
moved = Passé de { $old } à { $block }: { $facts }. { $stand }Erreur? Envoyez NON
taken-back = Annulé, { $block }: { $facts }. { $stand }
taken-back-ask = Annulé, { $block }: { $facts }. Qu'est-ce qui est juste? Renvoyez, comme { $example }
taken-back-count = Annulé, { $block }: { $facts }. Quel est le bon nombre?
nothing-to-undo = Il n'y a rien à annuler. Pour informer, un mot et un nombre, comme { $example }
unsure-change = Qu'est-ce qui est faux? Envoyez comme: { $example }

## Asking before storing

confirm = { $block }: { $facts }? { $why }Répondez 1 oui, 2 non
confirm-for = { $name } { $block }: { $facts }? { $why }Répondez 1 oui, 2 non
why-area = Le terrain en tient environ { $holds }. { "" }
why-alive = { $alive } arbres seulement sont vivants. { "" }
why-gaps = { $gaps } vides seulement sont connus. { "" }
why-large = C'est beaucoup sur { $alive }. { "" }
why-again = Vous avez déjà dit { $count }. Encore? { "" }
why-odd = { $value } cm, c'est rare. { "" }
why-shrunk = Avant, la moyenne était { $before } cm. { "" }
why-inches = Des cm, pas des pouces? { "" }
why-heaped = Tous finissent par 0 ou 5. Mesurés au ruban? { "" }
why-sum = Ramifiés ou non: { $told }, vivants: { $alive }. { "" }
why-thin = Moyenne { $mean } cm: trop mince à saigner. { "" }
why-feed = C'est plus de 1 kg par arbre. { "" }
why-before = C'est avant la plantation. { "" }
why-not-planted = Rien n'y est encore planté. { "" }
why-word = J'ai lu "{ $from }" comme "{ $to }". { "" }
why-none = { "" }
ask-block = Quel bloc: { $blocks }? Répondez par son nom.
ask-block-unknown = Je ne connais pas de bloc { $unknown }. C'est lequel: { $blocks }?
no-blocks = Votre terrain n'est pas encore sur ma liste, { $name }. { $adviser } va l'ajouter. Rien n'est perdu.
ask-count = Combien, pour { $facts }, bloc { $block }? Répondez par le nombre.
ask-count-range = { $low } ou { $high }, pour { $facts }, bloc { $block }? Répondez par un seul nombre.
ask-values = Quels tours en cm, bloc { $block }? Répondez par les nombres, comme 41 43 39
ask-values-height = Quelles hauteurs en cm, bloc { $block }? Répondez par les nombres, comme 210 240
ask-date = Quel jour? Répondez comme 12 mai ou il y a 3 jours.
ask-for-whom = Pour qui? { $people }. Répondez par le numéro.
dropped = Pas noté. Renvoyez quand vous voulez, comme { $example }
bare-planted = arbres plantés
bare-dead = arbres morts
bare-replaced = arbres remplacés
bare-holes_dug = trous creusés
bare-tapping_opened = arbres ouverts
bare-disease = arbres malades
bare-branched = arbres ramifiés
bare-not_branched = arbres
bare-other = arbres

## Not understood, help, leaving

unclear = Pardon, je n'ai pas compris. Ecrivez un mot, un nombre et le bloc, comme { $example }
stranger = Je ne connais pas ce numéro. Demandez à votre conseiller de le mettre sur la liste.
help = Dites ce qui est fait: { $example }, sarclé B, engrais B. Demandez: QUE FAIRE, APPELEZ MOI, LANGUE. Erreur: NON. Fin: STOP. -{ $adviser }
help-adviser = Envoyez: ETAT groupe, RETARD groupe, SILENCE, VIDES groupe, MALADIE, VISITE, FENETRE, PREVENIR groupe, ou le nom d'un planteur. Fin: STOP.
example = morts 8 { $block }
stopped = C'est fait. Plus de rappels à ce numéro. Vos données restent. DEBUT pour revenir, EFFACEZ MOI pour enlever votre nom.
started = Bienvenue, { $name }. Vous aurez des rappels pour vos blocs, environ un par semaine. Pour arreter: STOP. -{ $adviser }
same-again = Je l'ai déjà, merci.

## Farmers ask

now = { $name }, maintenant: { $tasks }. Ecrivez-moi quand c'est fait. -{ $adviser }
now-nothing = { $name }, rien à faire maintenant. Ensuite: { $task } { $block } vers { $day }. -{ $adviser }
now-none = { $name }, rien à faire, pas encore de date. Ecrivez ce qui est fait, comme { $example }. -{ $adviser }
my-blocks = { $blocks }
my-block = { $block }: { $alive } vivants sur { $planted }, planté { $day }
my-block-empty = { $block }: pas encore planté
when-task = { $task }, bloc { $block }: vers { $day }. -{ $adviser }
when-tap = { $name }, { $block } sera sans doute pret vers { $likely }, entre { $earliest } et { $latest }. C'est selon { $trees } arbres mesurés. -{ $adviser }
when-tap-unknown = { $name }, pas de tour connu pour { $block }: je ne peux pas dire. Mesurez quand je demande. Ne saignez pas avant que { $adviser } ait vu.
how-many-plants = Pour { $area } ha, environ { $points } plants; commandez { $order } pour couvrir les pertes. Vos piquets font foi. -{ $adviser }
how-much-feed = { $block }: { $trees } arbres x { $grams } g = { $kilograms } kg. Sarclez avant, sol humide, à { $ring } du tronc. -{ $adviser }
feed-ring = une main
how-much-unknown = Dites la surface, comme: combien de plants pour 1,2 ha. Ou demandez à { $adviser }: APPELEZ MOI
may-tap-no = Pas encore, { $name }: { $block } s'ouvre à { $girth } cm de tour sur { $share }% des arbres. Saigné trop tot, l'arbre reste mince. -{ $adviser }
may-tap-no-usual = Pas encore, { $name }: { $block } s'ouvre souvent vers { $girth } cm sur { $share }% des arbres, { $adviser } décide. Saigné trop tot, l'arbre reste mince.
may-tap-check = { $block } approche, { $name }. { $adviser } mesure avant l'ouverture. Ne saignez pas encore.
may-plant-wait = Attendez, { $name }. Le mot pour planter à { $group } n'est pas venu. Gardez les plants à l'ombre, humides. -{ $adviser }
may-plant-yes = Oui, { $name }: le mot pour planter est venu { $day }. Plantez en sol humide, 3 jours au plus après la livraison. -{ $adviser }
may-fill-yes = Oui: remplacez sur { $block } avant { $day }, sol humide, meme clone, plants forts. -{ $adviser }
may-fill-wait = Pas maintenant: trop peu de pluie reste pour des plants neufs sur { $block }. De nouveau dès { $day }. -{ $adviser }
may-fill-late = Mieux vaut non sur { $block }: après { $months } mois, les plants neufs restent petits à l'ombre. Demandez à { $adviser }.
may-spray = Pas de conseil de traitement par SMS. Suivez l'étiquette et la loi, voyez une personne formée. Couvrez-vous, pas de vent. Texte: APPELEZ MOI
may-other = Mieux vaut demander à { $adviser }. Ecrivez APPELEZ MOI et on vous appelle.
who = C'est la ligne hévéa de { $adviser }. On ne demande jamais argent ni code PIN. STOP pour finir, AIDE pour les mots.
my-data = Nous gardons: nom, ce numéro, groupe { $group }, { $blocks }, vos messages, accord { $consent }. Erreur? Ecrivez APPELEZ MOI
consent-none = pas donné
call-me = { $name }, { $adviser } va vous appeler. Si quelqu'un est en danger, allez d'abord en lieu sur.
call-me-notice = Appelez { $name } ({ $group }), numéro finit par { $digits }: demandé { $day }.
alarm-notice = Voyez { $name } ({ $group }), numéro finit par { $digits }: le message de { $day } parle peut-etre de { $alarm }.
unclear-notice = Aidez { $name } ({ $group }), numéro finit par { $digits }: deux messages pas compris, le dernier { $day }.
alarm-grief = décès
alarm-danger = danger
alarm-illness = maladie
alarm-complaint = plainte
alarm-money = argent
sick-notice = { $name } { $block } ({ $group }): { $facts }.
cluster-notice = { $group }: { $ailment } en { $count } endroits depuis { $day }. A voir. Puis PREVENIR { $group } alerte les voisins. Ne pas traiter encore.
warn-ask = { $group }: { $ailment } en { $count } endroits. Si vous avez vu, { $blocks ->
    [one] { $blocks } parcelle voisine sera prévenue
   *[other] { $blocks } parcelles voisines seront prévenues
  }. Répondez OUI { $code }
warn-done = { $blocks ->
    [one] { $blocks } parcelle voisine sera prévenue
   *[other] { $blocks } parcelles voisines seront prévenues
  } près de { $group }: { $ailment }.
warn-none = Pas de foyer de maladie à { $group }, ou pas d'arbres autour. Liste: MALADIE { $group }
girth-notice = { $name } { $block } ({ $group }): les tours ont environ { $months } mois de retard sur l'habitude. A voir.
no-answer = Je n'ai pas de réponse à cela. { $adviser } peut aider: APPELEZ MOI. Pour le prochain travail: QUE FAIRE
later = D'accord, { $name }: { $task }, bloc { $block }, de nouveau vers { $day }. -{ $adviser }
nothing-open = Je n'attends pas de réponse. Pour le prochain travail écrivez: QUE FAIRE
done = Merci, { $name }. Noté comme fait { $day }: { $task }, { $block }. Erreur? Envoyez NON
erase-ask = Votre nom et votre numéro seront effacés pour toujours. Pour le faire répondez OUI { $code }
erased = C'est fait. Votre nom et votre numéro sont effacés. Les chiffres du terrain restent sans vous.
code-wrong = Ce code n'est pas bon. Rien n'est fait.

## Jobs in one or two words

job-order_plants = commander plants
job-dig_pits = trouer
job-plant = planter
job-survival_check = compter morts
job-backfill = remplacer
job-weed = sarcler
job-feed = engrais
job-prune = tailler
job-induce_branching = induire
job-look_at_induced = voir pousses
job-root_check = voir racines
job-girth_census = mesurer tour
job-clear = defricher
job-line = piqueter
job-mulch = pailler
job-firebreak = pare-feu
job-count_tall = compter hauts
job-get_ready = se preparer
job-open = ouvrir
job-fill_pits = reboucher
job-sow_cover = semer couvert
job-leaf_check = voir feuilles
job-intercrop = vivriers
job-open_rest = ouvrir le reste
job-rain_watch = dire la pluie
job-hand_over = cloture
walk-every = 1 sur { $every } dès le { $from }
walk-all = tous les rangs
kind-cleared = défrichage
kind-lined = piquetage
kind-holes_dug = trouaison
kind-received = livraison
kind-planted = plantation
kind-dead = comptage
kind-replaced = remplacement
kind-weeded = sarclage
kind-fertilised = engrais
kind-sprayed = traitement
kind-pruned = taille
kind-branched = branches
kind-not_branched = branches
kind-branch_induction = induction
kind-girth = mesure
kind-height = mesure
kind-disease = controle
kind-damage = controle
kind-cover_sown = semis
kind-intercrop_sown = semis
kind-tapping_opened = ouverture
kind-not_done = travail
kind-rain = pluie

## Nudges. One job, a date, one reply word.

nudge-order_plants = { $name }, pour { $block } commandez { $trees } plants greffés avant { $by }. Demandez des plants certifiés. Répondez FINI. -{ $adviser }
nudge-dig_pits = { $name }, creusez les trous de { $block } avant { $by }: { $trees }, { $pit } cm. Signalez-les, loin des enfants. Répondez TROUS et nombre. -{ $adviser }
nudge-plant = { $name }, plantez { $block } avant { $by }, sol humide: { $trees } plants. Otez le sachet, tassez. Répondez PLANTE et nombre. -{ $adviser }
nudge-survival_check = { $name }, passez tous les rangs de { $block } avant { $by }. Sur { $trees } arbres, combien de morts? Répondez MORTS et nombre (0 aussi). -{ $adviser }
nudge-backfill = { $name }, { $block } a { $trees ->
    [one] { $trees } vide
   *[other] { $trees } vides
  }. Remplacez avant { $by }, sol humide, meme clone. Répondez REMPLACE et nombre. -{ $adviser }
nudge-weed = { $name }, sarclez les rangs de { $block } avant { $by }. A la main près du tronc, lame loin de l'écorce et du corps. Répondez SARCLE. -{ $adviser }
nudge-feed = { $name }, engrais { $block } avant { $by }: { $trees } x { $grams } g = { $kilograms } kg. Sarclez avant, sol humide, loin du tronc. Gants. Répondez ENGRAIS. -{ $adviser }
nudge-prune = { $name }, coupez les gourmands sous { $height } m, { $block }, avant { $by }. Depuis le sol, sans grimper. Répondez ELAGUE. -{ $adviser }
nudge-induce_branching = { $name }, { $block }: { $trees } arbres hauts sans branches. Faites comme on vous a montré, avant { $by }. Sans grimper. Répondez INDUCTION et nombre. -{ $adviser }
nudge-look_at_induced = { $name }, regardez les arbres induits de { $block } avant { $by }. Combien ont des branches? Répondez RAMIFIES et nombre. -{ $adviser }
nudge-root_check = { $name }, racines de { $block } avant { $by }: fils blancs au pied? Répondez RACINE BLANCHE et nombre (0 aussi). N'arrachez rien. -{ $adviser }
nudge-girth_census = { $name }, mesurez le tour à { $datum } cm, { $block }, avant { $by }: { $trees } arbres, { $walk }, minces aussi. Répondez TOUR et nombres. -{ $adviser }
nudge-clear = { $name }, plants de { $block } surs? Abattez avant { $by }: abatteur formé, les autres à 2 longueurs d'arbre, sans feu. Répondez FINI. -{ $adviser }
nudge-line = { $name }, piquetez les lignes de { $block } avant { $by }, en travers de la pente: environ { $trees } piquets. Répondez FINI. -{ $adviser }
nudge-mulch = { $name }, la saison sèche vient. Paillez { $block } avant { $by }, sans toucher les tiges, ombrez les faibles. Répondez FINI. -{ $adviser }
nudge-firebreak = { $name }, ouvrez un pare-feu de { $width } m autour de { $block } avant { $by }. Coupez, ne brulez pas, lame loin de vous. Répondez FINI. -{ $adviser }
nudge-count_tall = { $name }, comptez à { $block } avant { $by } les arbres de plus de { $height } m sans branches. Répondez PAS RAMIFIES et nombre. -{ $adviser }
nudge-get_ready = { $name }, { $block } ouvrira peut-etre sous un an. Voyez { $adviser } pour l'école de saignée avant { $by }. Ne saignez rien. Répondez FINI.
nudge-open = { $name }, { $block } est à la règle: { $share }% à { $girth } cm. { $adviser } regarde avant l'ouverture, d'ici { $by }. N'ouvrez que les arbres marqués.
nudge-open-usual = { $name }, { $block }: { $share }% à { $girth } cm. { $adviser } regarde avant l'ouverture, d'ici { $by }. N'ouvrez que les arbres marqués.
nudge-fill_pits = { $name }, rebouchez les trous de { $block } avant { $by }: bonne terre au fond, piquet au milieu. Loin des enfants. Répondez FINI. -{ $adviser }
nudge-sow_cover = { $name }, semez la couverture entre les rangs de { $block } avant { $by }, sol humide, loin des plants. Répondez FINI. -{ $adviser }
nudge-leaf_check = { $name }, feuilles de { $block } avant { $by }: taches, chute? Répondez FEUILLES MALADES et nombre, FINI si saines. Ne traitez pas. -{ $adviser }
nudge-near = { $name }, { $ailment } près de chez vous. Regardez { $block } avant { $by }. Répondez { $ailment } et nombre, 0 si rien. Ne traitez pas. -{ $adviser }
nudge-intercrop = { $name }, vivriers à { $block }? A { $distance } m des arbres. Avant { $by } répondez VIVRIERS et le nom, FINI si rien. -{ $adviser }
nudge-open_rest = { $name }, { $block }: { $trees } arbres trop minces. Mesurez à { $datum } cm avant { $by }. { $adviser } regarde avant l'ouverture. Répondez FINI.
nudge-rain_watch = { $name }, la pluie a-t-elle trempé le sol à { $block } depuis { $since }? Répondez PLUIE OUI ou PLUIE NON: cela dit quand planter. -{ $adviser }
nudge-hand_over = Bravo, { $name }. { $block } est en saignée: ces rappels s'arretent. Vos données restent. Besoin d'aide? Envoyez APPELEZ MOI. -{ $adviser }

## The adviser asks

status = { $group } { $day }: { $farmers ->
    [one] { $farmers } planteur
   *[other] { $farmers } planteurs
  }, planté { $planted }, vivants { $alive }. { $due }{ $late }{ $check }Silence { $quiet }, malades { $sick }
status-due = A faire: { $tasks }. { "" }
status-due-none = Rien à faire. { "" }
status-late = Retard: { $tasks }. { "" }
status-late-none = Sans retard. { "" }
status-check = A voir pour ouvrir { $count }. { "" }
alive-pct = { $pct }%
alive-pct-visited = { $pct }% ({ $visited }% vus)
alive-unknown = inconnu
task-count = { $task } { $count }
more = +{ $count }
late-list = Retard { $group }: { $people }
late-none = Aucun retard à { $group }.
late-person = { $name } { $task } { $days }j
late-person-told = { $name } { $task } { $days }j dit 3x
quiet-list = Silence plus de { $limit }j: { $people }
quiet-none = Personne n'est en silence depuis plus de { $limit } jours.
quiet-person = { $name } { $days }j
quiet-person-never = { $name } jamais
gaps-list = Vides { $group }: { $gaps } chez { $farmers ->
    [one] { $farmers } planteur
   *[other] { $farmers } planteurs
  }, commander { $order } avec pertes. { $people }
gaps-none = Aucun vide connu à { $group }. { $uncounted } blocs pas encore comptés.
gaps-person = { $name } { $gaps }
sick-list = Malades { $group }: { $people }
sick-list-cluster = Malades { $group }: { $ailment } en { $count } endroits depuis { $day }, à voir. { $people }
sick-none = Aucune maladie dite à { $group } en { $limit } jours.
sick-person = { $name } { $ailment } { $count }
visit-list = Visiter: { $people }
visit-none = Personne n'a besoin d'une visite.
visit-cluster = { $name } { $ailment } en { $count } endroits
visit-lost = { $name } { $pct }% morts
visit-quiet = { $name } silence { $days }j
visit-ending = { $name } { $task } reste { $days }j
feed-group = Engrais { $group }: { $farmers ->
    [one] { $farmers } planteur
   *[other] { $farmers } planteurs
  }, { $trees } arbres, { $kilograms } kg. Sacs de 50 kg: ensemble { $pooled }, chacun seul { $alone }.
girth-list = Tours { $group }: { $people }
girth-none = Pas encore de tours connus à { $group }.
feed-none = Pas d'engrais à mettre à { $group }.
member = { $name } ({ $group }): { $blocks }. Dernier message { $day }
member-never = { $name } ({ $group }): { $blocks }. Pas encore de message
member-block = { $block } { $alive }/{ $planted } vivants, planté { $day }{ $due }
member-block-empty = { $block } { $area }, pas planté{ $due }
member-due = , { $task } { $day }
member-girth = , tour { $mean } cm ({ $of }), { $against }{ $ready }
member-behind = retard { $months } m
member-ahead = avance { $months } m
member-ready = , pret { $earliest } à { $latest }
member-no-blocks = aucun bloc
window-ask = Ouvrir la plantation à { $group } dès { $day }? { $rain }{ $farmers ->
    [one] { $farmers } planteur sera prévenu
   *[other] { $farmers } planteurs seront prévenus
  }. Répondez OUI { $code }
window-opened = Plantation ouverte à { $group } dès { $day }. { $farmers ->
    [one] { $farmers } planteur sera prévenu
   *[other] { $farmers } planteurs seront prévenus
  }.
rain-open = Pluie 10 j: { $soaked } sur { $reporters } trempés, semble ouvert. { "" }
rain-hold = Pluie 10 j: { $soaked } sur { $reporters } trempés, attendre. { "" }
rain-few = Pluie 10 j: { $reporters } seulement ont dit. { "" }
rain-begun-notice = { $group }: pluie trempante chez { $soaked } sur { $reporters } depuis { $day }. Un temps sec peut revenir. Pour ouvrir: FENETRE { $group }
rain-stopped-notice = { $group }: pas de bonne pluie depuis { $day }, faux départ peut-etre. Ne pas ouvrir; plants en sachet à l'ombre et arrosés.
rain-stopped-notice-open = { $group }: pas de bonne pluie depuis { $day }, faux départ peut-etre. Pour arreter: SUSPENDRE PLANTATION { $group }
hold-none = La plantation à { $group } n'est pas ouverte: rien à suspendre.
hold-ask = Suspendre la plantation à { $group }? Plus de rappels de planter ({ $farmers } planteurs) avant réouverture. Répondez OUI { $code }
planting-held = Plantation suspendue à { $group } dès { $day }. Pour rouvrir: FENETRE { $group }
not-your-group = Je ne connais ni groupe ni planteur de ce nom chez vous. Les votres: { $groups }
