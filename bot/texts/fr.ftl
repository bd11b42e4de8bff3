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
said-part = { $clause } (une partie)
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
    [one] { $count } arbre mort de plus
   *[other] { $count } arbres morts de plus
  }
said-dead-none = aucun arbre mort
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
said-girth = circonférence de { $number ->
    [one] { $number } arbre
   *[other] { $number } arbres
  }, moyenne { $mean } cm
said-girth-share = circonférence: { $count } sur { $of } assez gros
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
said-intercrop-none = pas de vivrier
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
living = { $first } sur { $planted }
living-filled = { $first } + { $filled } sur { $planted }
stand-dead = { $dead } morts en tout, arbres vivants: { $living }. { "" }
stand-alive = Arbres vivants: { $living }. { "" }
stand-filled = Arbres vivants: { $living }, encore { $gaps ->
    [one] { $gaps } vide
   *[other] { $gaps } vides
  }. { "" }
stand-next = A refaire vers { $day }. { "" }
stand-ready = Saignée peut-etre de { $earliest } à { $latest }. { "" }
stand-meets = La mesure suffit. { $adviser } regarde avant l'ouverture. { "" }
stand-close = Presque: mesurez tous les arbres avant d'ouvrir. { "" }
stand-early = Trop tot pour dire quand saigner. { "" }
stand-look = Regardez les pousses dès { $day }. { "" }
stand-sick = { $adviser } le sait. N'arrachez rien, ne traitez pas. { "" }
stand-harm = { $adviser } le sait. Loin des branches cassées. { "" }
stand-sick-untold = N'arrachez rien, ne traitez pas. { "" }
stand-told = { $adviser } le sait. { "" }
stand-harm-untold = Loin des branches cassées. { "" }
stand-label = Suivez l'étiquette. Lavez-vous les mains. { "" }

unit-ha = ha
unit-acre = acres
unit-rai = rai
unit-m2 = m2
unit-kg = kg
unit-g = g
unit-bag = sacs
unit-tin = boites/seaux
unit-cup = tasses/poignées
unit-l = l
unit-m = m
unit-cm = cm
unit-mm = mm
unit-inch = pouces
unit-foot = pieds
land = { $hectares } ha

ailment-white_root = racine blanche
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
block-facts = { $block }: { $facts }
person-facts = { $name } { $block }: { $facts }
confirm-many = { $people }? Répondez 1 oui, 2 non
sheet-none = Pas de feuille { $number } chez vous. Ecrivez comme sur le papier: FEUILLE, son numéro, la ligne, la nouvelle: FEUILLE 12: 3 morts 20
sheet-rows = La feuille { $number } a les lignes 1 à { $rows }. Ecrivez: FEUILLE { $number }: 3 morts 20, 5 sarclé
many-told = Noté: { $people }. Faux? Envoyez NON
leader-told = { $name }, { $leader } a dit de vous, { $facts }. Faux? Répondez NON sous 7 jours. -{ $adviser }
leader-took-back = { $name }, { $leader } a retiré ce qui était dit de vous, { $facts }. -{ $adviser }
contested-notice = { $name } ({ $group }) dit que c'est faux, de { $leader }: { $facts }. C'est mis à part.
fixed-notice = { $adviser } a corrigé { $block }: { $facts }. Faux? Envoyez APPELEZ MOI
fixed-notice-leader = { $adviser } a corrigé sur { $block }: { $facts }. Pas exact? Répondez NON sous 7 jours.
fixed = Changé sur { $block }: { $facts }. { $stand }Pour annuler: ANNULE { $number }
fixed-moved = De { $old } à { $block }: { $facts }. { $stand }Pour annuler: ANNULE { $number }
put-back = De nouveau comme avant sur { $block }: { $facts }. { $stand }
taken-back = Annulé, { $block }: { $facts }. { $stand }
taken-back-ask = Annulé, { $block }: { $facts }. Qu'est-ce qui est juste? Renvoyez, comme { $example }
taken-back-count = Annulé, { $block }: { $facts }. Quel est le bon nombre?
nothing-to-undo = Il n'y a rien à annuler. Pour informer, le travail et un nombre, comme { $example }
unsure-change = Qu'est-ce qui est faux? Envoyez comme: { $example }

## Asking before storing

confirm = { $block }: { $facts }? { $why }Répondez 1 oui, 2 non
confirm-for = { $name } { $block }: { $facts }? { $why }Répondez 1 oui, 2 non
why-area = Le terrain n'en tient qu'environ { $holds }. { "" }
why-alive = { $alive } arbres seulement sont vivants. { "" }
why-gaps = { $gaps } vides seulement sont connus. { "" }
why-large = C'est beaucoup sur { $alive }. { "" }
why-again = Vous avez déjà dit { $count }. { "" }
why-odd = { $value } cm, est-ce juste? { "" }
why-shrunk = Avant, la moyenne était { $before } cm. { "" }
why-inches = Des cm, pas des pouces? { "" }
why-heaped = Tous finissent par 0 ou 5: vérifiez bien. { "" }
why-sum = Ramifiés + non ramifiés font { $told }, vivants: { $alive }. { "" }
why-thin = Moyenne { $mean } cm: trop mince à saigner. { "" }
why-feed = C'est plus de 1 kg par arbre. { "" }
why-before = C'est avant la plantation. { "" }
why-not-planted = Rien n'y est encore planté. { "" }
why-word = J'ai lu "{ $from }" comme "{ $to }". { "" }
why-none = { "" }
ask-block = Quelle parcelle: { $blocks }? Répondez par son nom.
ask-block-unknown = Je ne connais pas de parcelle { $unknown }. C'est laquelle: { $blocks }?
no-blocks = Votre terrain n'est pas encore sur ma liste, { $name }. { $adviser } va l'ajouter. Rien n'est perdu.
ask-count = Combien, pour { $facts }, parcelle { $block }? Répondez par le nombre.
ask-count-range = { $low } ou { $high }, pour { $facts }, parcelle { $block }? Répondez par un seul nombre.
ask-values = Quelles circonférences en cm, parcelle { $block }? Répondez par les nombres, comme 41 43 39
ask-values-height = Quelles hauteurs en cm, parcelle { $block }? Répondez par les nombres, comme 210 240
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

unclear = Pardon, je n'ai pas compris. Ecrivez le travail, un nombre et la parcelle, comme { $example }
stranger = Je ne connais pas ce numéro. Demandez à votre conseiller de le mettre sur la liste.
help = Dites ce qui est fait: { $example }, sarclé B, engrais B. Demandez: QUE FAIRE, APPELEZ MOI, LANGUE. Erreur: NON. Fin: STOP. -{ $adviser }
help-adviser = Par groupe: ETAT RETARD MORTS VIDES COMMANDE SACS TOUR PRET MALADIE RACINE PLUIE CLONE CARTE; SILENCE VISITE SEMAINE COUT ATTENTE. Puis SUITE. Fin: STOP
help-adviser-more = Par planteur: TOUR PRET DERNIER SUSPENDRE REPRENDRE PERDU. SUIVANT, FINI, COMPARER, QUI et chiffres. Groupe: VENT, FEU, FENETRE, PREVENIR. SUITE
help-adviser-people = NOUVEAU PROPRIÉTAIRE Keti A Pira. DIVISER Keti A Pira 240. NOUVEAU MEMBRE, groupe, nom, numéro. QUITTE LE GROUPE Keti. DEUXIEME TELEPHONE, nom, numéro. SUITE
help-adviser-deeds = Actions: DIRE, groupe et vos mots. REMISE et nom. appeler Keti vendredi, TENU. En visite: de Keti: morts 4 A. Après SUIVANT: son chiffre, PASSER et nom
help-clerk = Pour { $group }: ETAT RETARD SILENCE MORTS VIDES COMMANDE CARTE QUI. Messages: ATTENTE, SUIVANT, puis FINI. Conseiller sans téléphone: PERDU et nom. Fin: STOP
help-viewer = Pour { $group }: ETAT MORTS VIDES COMMANDE TOUR PRET CLONE MALADIE PLUIE CARTE. Puis SUITE. Fin: STOP
help-look-more = Aussi: RETARD SILENCE VISITE SACS PAYE FORMATION RACINE VENT FEU SUBVENTION COMPARER. Par planteur: TOUR PRET DERNIER TRAVAUX
help-leader = Ecrivez le travail: { $example }. Pour un membre: Nilo morts 3. Demandez: LISTE, QUE FAIRE, APPELEZ MOI. Erreur: NON. Fin: STOP -{ $adviser }
help-nursery = Plants: STOCK GT1 600. Remis: EXPEDIE GT1 200. Demandez: STOCK, REPARTITION, APPELEZ MOI. Fin: STOP. -{ $adviser }
not-yours = Cela ne se fait ou se voit pas ici, { $name }; { $adviser } peut. Ce que vous pouvez: AIDE
example = morts 8 { $block }
stopped = C'est fait. Plus de rappels à ce numéro. Vos données restent. DEBUT pour revenir, EFFACEZ MOI pour enlever votre nom.
started = Bienvenue, { $name }. Vous aurez des rappels pour vos parcelles, environ un par semaine. Pour arreter quand vous voulez: STOP. -{ $adviser }
welcome = Bonjour { $name }, ici Budwood: des SMS sur le travail de vos hévéas, environ un par semaine. Répondez librement. Autre langue: LANGUE. Fin: STOP. -{ $adviser }
same-again = Je l'ai déjà, merci.

## Farmers ask

now = { $name }, maintenant: { $tasks }. Ecrivez-moi quand c'est fait. -{ $adviser }
now-nothing = { $name }, rien à faire maintenant. Ensuite: { $task } { $block } vers { $day }. -{ $adviser }
now-none = { $name }, rien à faire, pas encore de date. Ecrivez ce qui est fait, comme { $example }. -{ $adviser }
my-blocks = { $blocks }
my-block = { $block }: vivants { $living }, planté { $day }
my-block-empty = { $block }: pas encore planté
when-task = { $task }, parcelle { $block }: vers { $day }. -{ $adviser }
when-tap = { $name }, la saignée de { $block } sera possible peut-etre vers { $likely }, entre { $earliest } et { $latest }. Selon { $trees } arbres; la prochaine mesure dira mieux. -{ $adviser }
when-tap-unknown = { $name }, pas de tour connu pour { $block }: je ne peux pas dire. Mesurez quand je demande. Ne saignez pas avant que { $adviser } ait vu.
when-tap-early = { $name }, trop tot pour dire quand saigner { $block }: { $trees } arbres disent trop peu. Mesurez quand je demande. Ne saignez pas avant que { $adviser } ait vu.
how-many-plants = Pour { $area }, environ { $points } plants; commandez { $order } pour couvrir les pertes. Le vrai nombre, ce sont vos piquets. -{ $adviser }
how-much-feed = { $block }: { $dose }. Sarclez avant, sol humide, en rond { $ring }. -{ $adviser }
feed-sum = { $trees } x { $grams } g = { $kilograms } kg
feed-doses = { $trees } arbres, { $products } par arbre: { $kilograms }
feed-brief = { $trees } x { $products } g = { $kilograms } kg
feed-grams = { $product } { $grams } g
feed-weight = { $kilograms } kg
feed-ring = au bord du feuillage, à 1 m au plus du tronc
how-much-unknown = Dites la surface, comme: combien de plants pour 1,2 ha. Ou demandez à { $adviser }: APPELEZ MOI
may-tap-no = Pas encore, { $name }: { $block } s'ouvre à { $girth } cm de tour sur { $share }% des arbres. Saigné trop tot, l'arbre reste mince. -{ $adviser }
may-tap-no-usual = Pas encore, { $name }: { $block } s'ouvre souvent vers { $girth } cm sur { $share }% des arbres, { $adviser } décide. Saigné trop tot, l'arbre reste mince.
may-tap-check = { $block } approche, { $name }. { $adviser } mesure avant l'ouverture. Ne saignez pas encore.
may-plant-wait = Attendez, { $name }. On n'a pas encore dit de planter à { $group }. Gardez les plants à l'ombre, humides. -{ $adviser }
may-plant-yes = Oui, { $name }: on peut planter depuis { $day }. Plantez en sol humide, 3 jours au plus après la livraison. -{ $adviser }
may-fill-yes = Oui: remplacez sur { $block } d'ici { $day }, sol humide, meme clone, plants forts. -{ $adviser }
may-fill-wait = Pas maintenant: trop peu de pluie reste pour des plants neufs sur { $block }. De nouveau dès { $day }. -{ $adviser }
may-fill-late = Mieux vaut non sur { $block }: après { $months } mois, les plants neufs restent petits à l'ombre. Demandez à { $adviser }.
may-spray = Pas de conseil pour pulvériser par SMS. Suivez l'étiquette et la loi, voyez une personne formée. Couvrez-vous, sans vent, loin de l'écorce et l'eau. APPELEZ MOI
may-other = Mieux vaut demander à { $adviser }. Ecrivez APPELEZ MOI et on vous appelle.
may-yes = Oui, { $name }: { $task }, parcelle { $block }, à faire d'ici { $day }. -{ $adviser }
who = C'est la ligne hévéa de { $adviser }. Nous ne demandons jamais d'argent ni de code PIN. STOP pour finir, AIDE pour les mots.
my-data = Nous gardons: nom, ce numéro, groupe { $group }, { $blocks }, vos messages. Accord: rappels { $consent }, acheteurs { $sharing }. Erreur? Ecrivez APPELEZ MOI
consent-none = pas donné
share-given = Noté, { $name }: un acheteur peut connaitre votre nom et le lieu de vos parcelles. Pour annuler: PARTAGE NON. -{ $adviser }
share-refused = Noté, { $name }: aucun acheteur ne saura rien de vous ni de vos parcelles. Pour changer: PARTAGE OUI. -{ $adviser }
share-ask = { $name }, un acheteur peut-il connaitre votre nom et le lieu des parcelles? Maintenant: { $sharing }. Répondez PARTAGE OUI ou PARTAGE NON. -{ $adviser }
sharing-yes = oui
sharing-no = non
call-me = { $name }, { $adviser } va vous appeler. Si quelqu'un est en danger, mettez-vous d'abord à l'abri.
call-me-untold = { $name }, je ne peux joindre personne pour vous: appelez vous-meme. Si quelqu'un est en danger, mettez-vous d'abord à l'abri.
call-me-notice = Appelez { $name } ({ $group }), numéro finit par { $digits }: demande du { $day }.
alarm-notice = Appelez vite { $name } ({ $group }), numéro finit par { $digits }: le message du { $day } parle peut-etre de { $alarm }.
alarm-grief = décès
alarm-danger = danger
alarm-illness = maladie
alarm-complaint = plainte
alarm-money = argent
alarm-fire = feu
alarm-snake = morsure de serpent
alarm-number = nouveau numéro ou téléphone perdu
matter-notice = { $name } ({ $group }), numéro finit par { $digits }, a écrit { $day }: { $alarm }. Pour le lire: SUIVANT
concern-call-me = à rappeler
concern-question = question
concern-unclear = pas compris
first-fire = Eloignez tout le monde du feu et de la fumée. Criez au secours. Ne l'éteignez pas seul. { $told }
first-snake = Bougez peu, allez vite au centre de santé. Ne coupez pas, ne sucez pas, pas de garrot. { $told }
first-danger = Allez d'abord en lieu sur et appelez les gens autour de vous. { $told }
first-illness = Si c'est grave, allez tout de suite au centre de santé. Pressez un linge propre si cela saigne. { $told }
told-adviser = J'ai prévenu { $adviser }.
told-nobody = Personne n'est prévenu: demandez de l'aide près de vous.
grief = { $name }, toutes mes condoléances. { $told } Plus de rappels avant l'accord de { $adviser }.
told = Merci, { $name }. J'ai prévenu { $adviser }, qui peut lire votre message.
not-told = { $name }, je ne sais pas répondre et n'ai pas pu prévenir { $adviser }. Demandez de vive voix.
only-done = Je note seulement le travail que vous avez fait. Quand c'est fait, écrivez comme { $example }
sick-notice = { $name } { $block } ({ $group }): { $facts }.
cluster-notice = { $group }: { $ailment } en { $count } endroits depuis { $day }. A voir. Puis PREVENIR { $group } alerte les voisins. Ne pas traiter encore.
warn-ask = { $group }: { $ailment } en { $count } endroits. Si vous avez vérifié, on demandera à { $blocks ->
    [one] { $blocks } parcelle voisine
   *[other] { $blocks } parcelles voisines
  } de regarder. Répondez OUI { $code }
warn-done = { $blocks ->
    [one] { $blocks } parcelle voisine
   *[other] { $blocks } parcelles voisines
  } de { $group } regarderont: { $ailment }.
warn-none = Pas de foyer de maladie à { $group }, ou pas d'arbres autour. Liste: MALADIE { $group }
girth-notice = { $name } { $block } ({ $group }): les circonférences ont environ { $months } mois de retard sur la normale. A voir.
open-notice = { $name } { $block } ({ $group }): sur { $trees } arbres, { $share }% assez gros pour saigner. A voir avant. Puis écrivez pour { $name }: ouvert et le nombre.
no-answer = Je n'ai pas de réponse à cela. { $adviser } peut aider: APPELEZ MOI. Pour le prochain travail: QUE FAIRE
price-none = Je n'ai pas de prix et ne devine pas. Demandez là où on achète le caoutchouc, ou { $adviser }: APPELEZ MOI. Travail suivant: QUE FAIRE
later = D'accord, { $name }: { $task }, parcelle { $block }, de nouveau vers { $day }. -{ $adviser }
nothing-open = Je n'attends pas de réponse. Pour le prochain travail écrivez: QUE FAIRE
done = Merci, { $name }. Noté comme fait { $day }: { $task }, { $block }. Erreur? Envoyez NON
erase-ask = Votre nom, votre numéro et vos messages seront effacés pour toujours. Pour le faire répondez OUI { $code }
erased = C'est fait: nom, numéro et messages effacés. Les chiffres du terrain restent sans vous. Les anciennes copies les gardent jusqu'à leur destruction.
nothing-held = Nous n'avons aucun nom pour ce numéro. Il n'y a plus rien à effacer.
code-wrong = Ce code n'est pas bon. Rien n'est fait.
code-locked = Trop de codes, ou des codes faux. Rien n'est fait; pour cela aucun code ne compte pendant un jour. Ce n'était pas vous? Dites-le au bureau.
visit-ask = Pour noter chez { $name } et d'autres jusqu'à ce soir répondez OUI { $code }. Pas demandé? Ne répondez pas, prévenez le bureau.
office-code = { $code } ouvre les pages du bureau pendant { $minutes } minutes. Ne le donnez à personne. Pas demandé? Prévenez le bureau.
stop-ask = Plus aucun message, meme si un planteur est en danger? Alors répondez OUI { $code }
held-back = Beaucoup de messages. Je réponds à nouveau plus tard. En cas de danger, appelez au secours.
digest = { $count ->
    [one] { $count } avis de plus
   *[other] { $count } avis de plus
  } cette heure. Demandez à: { $people }

## Jobs in one or two words

job-order_plants = commander plants
job-dig_pits = trouer
job-plant = planter
job-survival_check = compter pertes
job-backfill = remplacer
job-weed = sarcler
job-feed = engrais
job-prune = tailler
job-induce_branching = induire
job-look_at_induced = voir pousses
job-root_check = voir racines
job-girth_census = mesurer tour
job-clear = défricher
job-line = piqueter
job-mulch = pailler
job-firebreak = pare-feu
job-count_tall = compter tiges
job-get_ready = préparer saignée
job-open = mise en saignée
job-fill_pits = remplir trous
job-sow_cover = semer couverture
job-leaf_check = voir feuilles
job-intercrop = vivriers
job-open_rest = ouvrir le reste
job-rain_watch = signaler pluie
job-hand_over = fin du suivi
walk-every = 1 arbre sur { $every }, premier: no { $from }
walk-all = tous les rangs
pit-edge = { $cm } cm
pit-round = ronds, large { $wide } cm, fond { $deep }
datum-ground = { $cm } cm du sol
datum-union = { $cm } cm de la greffe
usual = environ { $value }
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

nudge-order_plants = { $name }, pour { $block } commandez { $trees } plants greffés d'ici { $by }. Demandez des plants certifiés. Répondez FINI.{ $how } -{ $adviser }
nudge-dig_pits = { $name }, creusez { $block } d'ici { $by }: { $trees } trous, { $pit }. Signalez-les, loin des enfants. Répondez TROUS et nombre.{ $how } -{ $adviser }
nudge-plant = { $name }, plantez { $block } d'ici { $by }, sol humide: { $trees } plants. Otez le sachet, tassez. Répondez PLANTE et nombre.{ $how } -{ $adviser }
nudge-survival_check = { $name }, passez tous les rangs de { $block } d'ici { $by }. Sur { $trees } arbres, combien de morts? Répondez MORTS et nombre (0 aussi). -{ $adviser }
nudge-backfill = { $name }, { $block } a { $trees ->
    [one] { $trees } vide
   *[other] { $trees } vides
  }. Remplacez d'ici { $by }, sol humide, meme clone. Répondez REMPLACE et nombre. -{ $adviser }
nudge-weed = { $name }, sarclez les rangs de { $block } d'ici { $by }. A la main près du tronc, lame loin de l'écorce et du corps. Répondez SARCLE. -{ $adviser }
nudge-feed = { $name }, engrais à { $block } d'ici { $by }: { $dose }. Sarclez avant, sol humide, loin du tronc. Gants. Répondez ENGRAIS. -{ $adviser }
nudge-prune = { $name }, coupez les gourmands encore minces sous { $height } m, { $block }, d'ici { $by }. Depuis le sol, sans grimper. Répondez GOURMANDS. -{ $adviser }
nudge-induce_branching = { $name }, { $block }: { $trees } arbres hauts sans branches. Faites seulement comme on vous a montré, d'ici { $by }. Sans grimper. Répondez INDUCTION et nombre. -{ $adviser }
nudge-look_at_induced = { $name }, d'ici { $by } voyez les arbres de l'induction à { $block }. Pousses? Otez le lien, sinon la tete meurt. Répondez RAMIFIES et nombre. -{ $adviser }
nudge-root_check = { $name }, voyez le pied des arbres de { $block } d'ici { $by }: fils blancs? Répondez RACINE BLANCHE et nombre (0 aussi). N'arrachez rien. -{ $adviser }
nudge-girth_census = { $name }, mesurez { $trees } arbres de { $block } à { $datum } d'ici { $by }: { $walk }, minces aussi. Répondez TOUR et nombres.{ $how } -{ $adviser }
nudge-clear = { $name }, plants de { $block } assurés? Alors abattez, nettoyez d'ici { $by }: abatteur formé, les autres à 2 longueurs d'arbre, sans feu. Répondez FINI. -{ $adviser }
nudge-line = { $name }, piquetez les lignes de { $block } d'ici { $by }, à niveau, en travers s'il y a pente: environ { $trees } piquets. Répondez FINI. -{ $adviser }
nudge-mulch = { $name }, la saison sèche vient. Paillez { $block } d'ici { $by }, à { $gap } cm des tiges, ombragez les plants faibles. Répondez FINI. -{ $adviser }
nudge-firebreak = { $name }, ouvrez un pare-feu, { $width } m de large, autour de { $block } d'ici { $by }. Coupez, ne brulez pas, lame loin de vous. Répondez FINI. -{ $adviser }
nudge-count_tall = { $name }, comptez à { $block } d'ici { $by } les arbres qui dépassent { $height } m sans branches. Répondez PAS RAMIFIES et nombre (0 aussi). -{ $adviser }
nudge-get_ready = { $name }, { $block } s'ouvrira peut-etre dans l'année. Voyez { $adviser } pour l'école de saignée d'ici { $by }. N'achetez rien, ne saignez rien. Répondez FINI.
nudge-open = { $name }, { $block } remplit la règle: { $share }% des arbres à { $girth } cm. { $adviser } regarde avant l'ouverture, d'ici { $by }. N'ouvrez que les arbres marqués.
nudge-open-usual = { $name }, { $block }: { $share }% des arbres à { $girth } cm. { $adviser } regarde avant l'ouverture, d'ici { $by }. N'ouvrez que les arbres marqués.
nudge-fill_pits = { $name }, rebouchez les trous de { $block } d'ici { $by }: bonne terre au fond, piquet au milieu. Loin des enfants. Répondez FINI.{ $how } -{ $adviser }
nudge-sow_cover = { $name }, semez la couverture entre les rangs de { $block } d'ici { $by }, sol humide, loin des plants. Répondez FINI. -{ $adviser }
nudge-leaf_check = { $name }, regardez les feuilles de { $block } d'ici { $by }. Répondez TACHES ou CHUTE DES FEUILLES et nombre, FINI si saines. Ne traitez pas. -{ $adviser }
field-round = { $name }, tour { $block } avant { $by }: { $jobs }. Lame loin du corps, sans grimper, arracher ni traiter. Dites FINI. -{ $adviser }
round-done = Merci, { $name }. Tour de { $block } noté comme fait { $day }, rien de malade. Erreur? Envoyez NON
walk-then = { ", " }
walk-weeds = herbes
walk-shoots = rejets
walk-roots = racines
walk-leaves = feuilles
walk-crops = vivriers
nudge-near = { $name }, tout près: { $ailment }. Voyez { $block } d'ici { $by }. Répondez { $ailment } et nombre, 0 si rien. N'arrachez rien, ne traitez pas. -{ $adviser }
nudge-intercrop = { $name }, vivriers à { $block }? A { $distance } m des arbres. D'ici { $by } répondez VIVRIERS et le nom, FINI si rien. -{ $adviser }
nudge-intercrop-steep = { $name }, { $block } est en pente: mieux vaut pas de vivriers, une couverture tient le sol. D'ici { $by } dites VIVRIERS et le nom, FINI si rien. -{ $adviser }
nudge-open_rest = { $name }, { $block }: { $trees } arbres trop minces. Mesurez à { $datum } d'ici { $by }. { $adviser } regarde avant l'ouverture. Répondez TOUR et nombres.
nudge-rain_watch = { $name }, la pluie a-t-elle trempé le sol à { $block } depuis { $since }? Répondez PLUIE OUI ou PLUIE NON: cela dit quand planter. -{ $adviser }
nudge-hand_over = Bravo, { $name }. { $block } est en saignée: ces rappels s'arretent. Vos données restent. Besoin d'aide? Envoyez APPELEZ MOI. -{ $adviser }

## The adviser asks

waiting-list = En attente { $count }, depuis { $hours }h: { $people }. Pour lire: SUIVANT
waiting-none = Aucun message ne vous attend.
waiting-person = { $concern } { $count } ({ $name } { $hours }h)
waiting-next = { $name } ({ $group }) { $digits }, { $hours }h, { $concern }. Réglé? FINI: { $text }
waiting-next-store = { $name } ({ $group }) { $digits }, { $hours }h. Noter { $block }: { $facts }? Répondez 1. Réglé? FINI: { $text }
waiting-next-choose = { $name } ({ $group }) { $digits }, { $hours }h. Noter { $readings }? Répondez le chiffre. Réglé? FINI: { $text }
waiting-reading = { $number } { $block } { $facts }
waiting-next-number = { $name } ({ $group }) { $digits }, { $hours }h. Perdu? PERDU { $name }. Nouveau? CHANGÉ { $name } + numéro. Réglé? FINI: { $text }
waiting-closed = Réglé: { $name }. Encore en attente: { $count }.
waiting-old = { $count ->
    [one] 1 message attend
   *[other] { $count } messages attendent
  } depuis { $hours }h, un de { $name } ({ $group }). Pour lire: SUIVANT
held = Pas de rappels à { $name } jusqu'à ce que vous écriviez REPRENDRE { $name }
held-until = Pas de rappels à { $name } avant { $day }. Pour finir plus tot: REPRENDRE { $name }
gone-on = { $name } a de nouveau les rappels.
not-held = { $name } a déjà les rappels.

## A text or a group goes to a colleague
pass-whom = A qui? Peuvent le prendre: { $people }
pass-nobody = Personne d'autre sur la liste ne peut le prendre.
pass-none = Aucun message lu à l'instant. Pour lire: SUIVANT
passed = Passé à { $adviser }: le message de { $name }. Encore en attente: { $count }
passed-notice = { $adviser } vous passe un message de { $name } ({ $group }). Pour lire: SUIVANT
hand-ask = { $name } suit désormais { $groups }: planteurs { $farmers }, messages { $waiting }, promesses { $owed }, malades { $sick }? Répondez OUI { $code }
handed = { $name } suit maintenant { $groups } et le sait: planteurs { $farmers }, messages { $waiting }, promesses { $owed }, malades { $sick }.
handed-notice = { $adviser } vous remet { $groups }: planteurs { $farmers }, messages { $waiting }, promesses { $owed }, malades { $sick }. ATTENTE, SEMAINE, MALADIE

## What an adviser owes to whom
promised = Noté, No { $number }, avant { $day }: { $text }. Fait? Ecrivez TENU { $number }
promise-kept = Fait: { $text }. Encore promis: { $count }
promise-none = Rien de tel n'est promis. Pour voir ce qui l'est: SEMAINE
promise-full = { $count } promesses sont ouvertes. Réglez-en d'abord: SEMAINE
owed = { $number } { $text } ({ $day })
owed-call = appeler { $name } ({ $day })

## An adviser's own words to a group or a person
announce-ask = { $phones ->
    [one] { $phones } téléphone
   *[other] { $phones } téléphones
  }, 1 message chacun{ $cost }, { $when }{ $left }. Envoyer? Répondez OUI { $code }. Texte: { $text }
announce-cost = , prix { $cost }
announce-now = tout de suite
announce-later = { $day } dès { $time }
announce-left = ; rien pour { $count } (repos, STOP)
announced = En route vers { $phones ->
    [one] { $phones } téléphone
   *[other] { $phones } téléphones
  }, { $when }{ $left }.
announcement = { $text } -{ $adviser }
announce-nobody = Personne de { $name } ne peut rien recevoir maintenant: repos, STOP ou sans téléphone. Rien n'est envoyé.
announce-long = Trop long de { $count } lettres pour un message. Rien n'est envoyé.
announce-empty = Que faut-il dire? Ecrivez DIRE { $name } et derrière vos mots.

## A phone is lost or found, a number is another one
phone-lost-ask = Téléphone de { $people } (fin { $digits }) perdu? Il ne recoit plus rien et ne change rien. Répondez OUI { $code }
phone-lost = Bloqué: téléphone de { $people }, fin { $digits }. Retrouvé: RETROUVÉ { $name }. Nouveau: CHANGÉ { $name } et le numéro.
phone-lost-adviser = Bloqué: téléphone de { $people }, fin { $digits }. Le nouveau numéro vient avec la liste du bureau.
phone-found-ask = Téléphone de { $people } (fin { $digits }) de nouveau en bonnes mains? Répondez OUI { $code }
phone-found = Le téléphone de { $people }, fin { $digits }, compte de nouveau.
phone-none = { $name } n'a pas d'autre téléphone sur la liste.
phone-is-lost = Ce téléphone est noté perdu: rien n'est dit ni changé. Votre message est gardé. Pas perdu? Allez voir votre conseiller.
number-ask = { $name } a désormais le numéro { $number }? L'ancien ({ $digits }) perd tous ses droits. Répondez OUI { $code }
number-moved = { $name } a maintenant le numéro qui finit par { $digits }. Un ancien numéro ne compte plus.
number-own = Votre propre numéro change par la liste du bureau, pas par message. Téléphone perdu: PERDU et votre nom, d'un autre téléphone.
number-unread = Pas un numéro mobile de ce pays. Rien n'est fait. Ecrivez CHANGÉ { $name } et le numéro entier.
number-taken = Le numéro qui finit par { $digits } est à quelqu'un d'autre. Rien n'est fait. Partagé? Le bureau le met sur la liste.
number-code = { $code }: code de { $name } pour ce numéro sur la ligne hévéa. Envoyez-le de l'ancien téléphone. Pas pour vous? Ne répondez pas.
number-code-sent = Un code est parti au numéro qui finit par { $digits }. Envoyez-le d'ici: ce numéro sera à vous, l'ancien ne comptera plus.

## Land and people pass from one to another
owner-ask = { $block } de { $old } ({ $trees } arbres) est désormais à { $name }, avec tout son passé? Répondez OUI { $code }
owner-changed = { $block } est à { $name } maintenant, { $trees } arbres. { $old } ne recevra plus rien à ce sujet.
owner-told-new = { $name }, { $block } de { $old } est à vous sur la liste, { $trees } arbres. Faux? Envoyez APPELEZ MOI. -{ $adviser }
owner-told-old = { $name }, { $block } est à quelqu'un d'autre sur la liste: plus de messages à ce sujet. Faux? APPELEZ MOI. -{ $adviser }
owner-which = Quelle parcelle va à qui? Envoyez NOUVEAU PROPRIÉTAIRE, l'ancien, la parcelle, le nouveau. Les deux sur votre liste.
part-ask = { $trees } des { $alive } arbres de { $block } de { $old } sont désormais une parcelle de { $name }? Répondez OUI { $code }
part-made = { $name } a { $block } maintenant, { $trees } arbres; { $alive } restent à { $old }. La surface suit les arbres: vérifiez-la.
part-told = { $name }, { $trees } arbres de { $block } sont à quelqu'un d'autre sur la liste. Faux? APPELEZ MOI. -{ $adviser }
part-which = Combien d'arbres vont à qui? Envoyez DIVISER, le planteur, la parcelle, le nouveau, le nombre d'arbres vivants, pas tous.
join-ask = { $name } au { $number } entre dans { $group }? Pas de rappels avant un DEBUT de ce numéro. Répondez OUI { $code }
join-ask-known = { $name } entre dans { $group } avec ses parcelles et leur passé? Répondez OUI { $code }
joined = { $name } est dans { $group }. Un nouveau ne recoit rien avant d'envoyer DEBUT de son téléphone.
join-which = Qui entre dans quel groupe? Envoyez NOUVEAU MEMBRE, le groupe, le nom, le numéro entier.
leave-ask = { $name } sort de { $group }? Plus de rappels; ses données restent. Répondez OUI { $code }
left = { $name } n'a plus de groupe ni de rappels. Ses données restent. De retour? NOUVEAU MEMBRE, groupe, nom, numéro.
left-told = { $name }, vous n'etes plus sur la liste de { $group }: plus de rappels. Faux? Voyez { $adviser }.
leave-which = Qui sort? Envoyez QUITTE LE GROUPE et le nom.
helper-ask = { $text } au { $number } travaille pour { $name } et recoit les messages, après son oui? Répondez OUI { $code }
helper-asked = Question posée à { $text } au numéro qui finit par { $digits }. Les messages pour { $name } y vont après un oui.
helper-invite = { $text }: { $adviser } peut envoyer ici des messages sur les parcelles de { $name }? Répondez OUI ou NON. Jamais d'argent ni de code PIN.
helper-agreed = Merci, { $text }. Les messages pour { $name } viennent ici et vos nouvelles comptent. Pour arreter: STOP
helper-ended = C'est fait, { $text }. Plus de messages pour { $name } ici.
helper-notice = { $text } est d'accord: les messages pour { $name } vont au numéro qui finit par { $digits }.
helper-which = Qui travaille pour qui? Envoyez DEUXIEME TELEPHONE, le nom sur la liste, l'autre nom, le numéro entier.

status = { $group } { $day }: { $farmers ->
    [one] { $farmers } planteur
   *[other] { $farmers } planteurs
  }, planté { $planted }, vivants { $alive }. { $due }{ $late }{ $check }Muets { $quiet }, malades { $sick }{ $peace }
status-due = A faire: { $tasks }. { "" }
status-due-none = Rien à faire. { "" }
status-late = Retard: { $tasks }. { "" }
status-late-none = Sans retard. { "" }
status-check = A voir pour ouvrir { $count }. { "" }
left-in-peace = . Laissés en paix { $count }
feed-lost = . Engrais perdus en { $days } jours: { $count }, voir { $name }
alive-pct = { $pct }%
alive-pct-visited = { $pct }% ({ $visited }% vus)
alive-unknown = ?
task-count = { $task } { $count }
more = +{ $count }
more-jobs = reste { $count }
more-none = C'est tout.
status-all = { $groups }
status-line = { $group } vivants { $alive } retard { $late } muets { $quiet } malades { $sick }
late-all = Retard: { $groups }
gaps-all = Vides: { $groups }
sick-all = Malades: { $groups }
group-count = { $group } { $count }
group-first = { $group } { $count } ({ $first })
gaps-order = { $order ->
    [0] trop tard pour remplacer
   *[other] commander { $order }
  }
late-list = Retard { $group }: { $people }{ $peace }{ $lost }
late-none = Aucun retard à { $group }{ $peace }{ $lost }.
late-person = { $name } { $task } { $days }j
late-person-told = { $name } { $task } { $days }j rappelé 3x
quiet-list = Silence plus de { $limit }j: { $people }{ $why }
quiet-none = Personne n'est en silence depuis plus de { $limit } jours{ $why }.
quiet-person = { $name } { $days }j
quiet-person-never = { $name } jamais
gaps-list = Vides { $group }: { $gaps } chez { $farmers ->
    [one] { $farmers } planteur
   *[other] { $farmers } planteurs
  }, { $order ->
    [0] trop tard pour remplacer
   *[other] commander { $order } pertes comprises
  }. { $people }
gaps-none = Aucun vide connu à { $group }. { $uncounted } parcelles pas encore comptées.
gaps-person = { $name } { $gaps }
sick-list = Malades { $group }: { $people }
sick-list-cluster = Malades { $group }: { $ailment } en { $count } endroits depuis { $day }, à voir. { $people }
sick-none = Aucune maladie signalée à { $group } en { $limit } jours.
sick-person = { $name } { $ailment } { $count }
visit-list = Visiter: { $people }{ $peace }
visit-none = Personne n'a besoin d'une visite{ $peace }.
visit-cluster = { $name } { $ailment } en { $count } endroits
visit-lost = { $name } { $pct }% d'arbres morts
visit-quiet = { $name } silence { $days }j
visit-ending = { $name } { $task } reste { $days }j
feed-group = Engrais { $group }: { $farmers ->
    [one] { $farmers } planteur
   *[other] { $farmers } planteurs
  }, { $trees } arbres, { $kilograms } kg. Sacs de 50 kg: ensemble { $pooled }, chacun seul { $alone }. { $people }
girth-list = Tours { $group }: { $people }
girth-none = Pas encore de tours connus à { $group }.
feed-none = Pas d'engrais à mettre à { $group }.
member = { $name } ({ $group }): { $blocks }. Dernier message { $day }
member-told = { $name } ({ $group }): { $blocks }. Nouvelles { $day }, pas encore de message
member-never = { $name } ({ $group }): { $blocks }. Pas encore de message
member-block = { $block } vivants { $living }, planté { $day }{ $due }
member-block-empty = { $block } { $area }, pas planté{ $due }
member-due = , { $task } { $day }
member-girth = , tour { $mean } cm ({ $of }), { $against }{ $ready }
member-behind = retard { $months } mois
member-ahead = avance { $months } mois
member-ready = , saignée { $earliest } à { $latest }
member-no-blocks = aucune parcelle
member-which = Lequel? { $people }
window-ask = Ouvrir la plantation à { $group } dès { $day }? { $rain }{ $farmers ->
    [one] { $farmers } planteur sera prévenu
   *[other] { $farmers } planteurs seront prévenus
  }. Répondez OUI { $code }
window-opened = Plantation ouverte à { $group } dès { $day }. { $farmers ->
    [one] { $farmers } planteur sera prévenu
   *[other] { $farmers } planteurs seront prévenus
  }.
rain-open = Pluie 10 j: sol trempé chez { $soaked } sur { $reporters }, bon pour ouvrir. { "" }
rain-hold = Pluie 10 j: sol trempé chez { $soaked } sur { $reporters }, attendre. { "" }
rain-few = Pluie 10 j: { $reporters } réponses seulement. { "" }
rain-begun-notice = { $group }: sol trempé chez { $soaked } sur { $reporters } depuis { $day }. Un temps sec peut revenir. Pour ouvrir: FENETRE { $group }
rain-stopped-notice = { $group }: pas de bonne pluie depuis { $day }, faux départ peut-etre. Ne pas ouvrir; plants en sachet à l'ombre et arrosés.
rain-stopped-notice-open = { $group }: pas de bonne pluie depuis { $day }, faux départ peut-etre. Pour arreter: SUSPENDRE PLANTATION { $group }
hold-none = La plantation à { $group } n'est pas ouverte: rien à suspendre.
hold-ask = Suspendre la plantation à { $group }? Plus de rappels de planter ({ $farmers } planteurs) avant réouverture. Répondez OUI { $code }
planting-held = Plantation suspendue à { $group } dès { $day }. Pour rouvrir: FENETRE { $group }
not-your-group = Quel groupe ou quel planteur? Les votres: { $groups }

## For the operator: how the service is

operator-well = Tout va bien. { $state }
operator-trouble = Veuillez voir le service de messages: { $troubles }. { $state }
operator-state = Dernier message venu il y a { $hours }h. A envoyer: { $waiting }. Parties ce mois: { $parts }{ $share }.
operator-state-silent = Aucun message venu encore. A envoyer: { $waiting }. Parties ce mois: { $parts }{ $share }.
operator-share = , { $pct }% du budget
operator-refused = { $gateway } ne prend pas les messages
operator-down = { $gateway } n'est pas relié
operator-says = voyez la carte SIM de { $gateway }
operator-silent = rien ne vient par { $gateway } depuis { $hours }h
operator-machine = Le téléphone finissant par { $digits } écrit comme une machine et a moins de réponses. Demandez à qui il est.
operator-oldest = un message attend l'envoi depuis { $hours }h
operator-disk = le disque est presque plein
operator-spent = le budget du mois est fini
operator-budget = { $pct }% du budget du mois est parti, { $parts } parties. { $stops }
operator-stops-none = Rien ne cesse encore.
operator-stops-some = Plus de réponse aux inconnus. Rappels jusqu'à 90 et 95%, réponses jusqu'à 100%.
operator-stops-all = Jusqu'à sa fin partent seuls codes, STOP, secours et avis.

## The adviser asks more. A fact is known by a visit, a list, a leader, or an own text: a letter each.

source-visit = V
source-sheet = L
source-leader = R
source-text = T
untold = pas dit
quiet-failing = { $person } tél. en panne
quiet-resting = . En repos { $count }
quiet-idle = . Rien à faire { $count }
dead-all = Morts: { $groups }
dead-line = { $group } { $dead } sur { $planted }
dead-list = Morts { $group }: { $dead } sur { $planted } ({ $pct }%). { $people }{ $uncounted }
dead-person = { $name } { $pct }% { $source }
dead-uncounted = . Pas comptés { $count }
dead-parts = Morts { $group }: { $dead } sur { $planted } ({ $pct }%). { $parts }
dead-part = { $what } { $count }
clone-all = Clones: { $groups }
clone-list = Clones { $group }: { $clones }
clone-none = Rien n'est encore planté à { $group }.
clone-share = { $clone } { $pct }% (morts { $dead } sur { $planted })
order-all = Commande: { $groups }
order-list = Commande { $group }: { $plants } plants, { $farmers ->
    [one] { $farmers } planteur
   *[other] { $farmers } planteurs
  }, { $land }. Ferme { $firm }, souhait { $wished }{ $by }. { $parts }
order-none = Personne à { $group } n'a de jour de plantation.
order-part = { $clone } { $plants } { $day }
order-by = , commander avant { $day }
order-firm = ferme { $firm }
feed-all = Sacs: { $groups }
feed-share = { $name } { $kilograms } kg
work-all = { $task }: { $groups }
work-line = { $group } fait { $done } à faire { $due } retard { $late }
work-round = { $group } { $task }: fait { $done }, à faire { $due }, retard { $late }. { $people }
root-all = Racines: { $groups }
root-round = Racines { $group }: vu { $done }, à voir { $due }, retard { $late }. { $found }
root-none = Pas de racine blanche signalée.
fire-all = Pare-feu: { $groups }
fire-round = Pare-feu { $group }: fait { $done }, à faire { $due }, retard { $late }. Incendies: { $found }
fire-none = aucun signalé
wind-all = Arbres touchés par le vent: { $groups }
wind-list = Vent { $group }, { $days }j: { $farmers } sur { $of } l'ont dit, { $trees } arbres. { $people }
wind-none = Pas de vent signalé à { $group } en { $days } jours.
harm-all = Arbres touchés: { $groups }
harm-list = { $group }, pertes ({ $cause }) en { $days }j: { $farmers } sur { $of } l'ont dit, { $trees } arbres. { $people }
harm-none = { $group }: aucune perte ({ $cause }) annoncée en { $days } jours.
harm-ask = Demander à { $group } ({ $cause }): { $phones } téléphones, 1 message chacun? Répondez OUI { $code }
harm-sent = { $phones } téléphones de { $group } seront interrogés ({ $cause }). Pour voir les réponses: { $cause } { $group }
harm-question = { $name }, { $cause } à { $group }? Combien d'arbres touchés? N'allez voir que sans danger. Répondez { $cause } et le nombre, 0 si aucun. -{ $adviser }
harm-asked = { $group }, { $cause }, demandé { $day }: { $answered } sur { $of } ont répondu, { $hurt } perdent { $trees } arbres. { $people }
harm-asked-none = { $group }, { $cause }, demandé { $day }: les { $of } ont répondu, aucun arbre touché.
harm-silent = { $name } sans réponse
leaders-ask = Demander à { $leaders } chefs des nouvelles de { $people }? Répondez OUI { $code }
leaders-none = Personne n'est en silence dont un chef pourrait donner des nouvelles.
leaders-asked = Chefs interrogés: { $leaders }
leader-asked = { $name }, rien de { $people } depuis { $limit } jours. Vont-ils bien? Ecrivez ce qu'ils ont fait, ou APPELEZ MOI. -{ $adviser }
girth-all = Parcelles mesurées: { $groups }
girth-one = { $name } { $block } { $day } { $source }: { $trees } arbres, moyenne { $mean } cm, écart { $spread }%, plus mince { $smallest }. { $against }
girth-share = { $name } { $block } { $day } { $source }: { $count } arbres sur { $of } assez gros
girth-unknown = Pas encore de tours connus de { $name }.
ready-one = { $name } { $block }: saignée vers { $likely }, de { $earliest } à { $latest }, sur { $trees } arbres
ready-close = { $name } { $block }: proche, mesurer et voir avant d'ouvrir{ $more }
ready-trees = . Arbres à saigner { $trees }{ $hectare }: { $pct }% des vivants{ $places }{ $spread }{ $runts }
ready-hectare = , { $trees } par hectare
ready-places = , { $pct }% des places
ready-spread = ; écart { $spread }%
ready-runts = , chétifs { $pct }%: herbes, ombre, racines?
ready-early = { $name } { $block }: trop tot pour dire, { $trees } arbres
ready-unknown = { $name } { $block }: pas encore de tours
ready-opened = { $name } { $block }: en saignée
ready-group = Saignée { $group }: { $years }. A voir { $now }, trop tot { $early }, sans tours { $unknown }
ready-year = { $year } { $stands } ({ $land })
ready-no-year = pas encore d'année
ready-now = Voir avant d'ouvrir: { $people }
ready-now-none = Aucune parcelle n'est proche de l'ouverture.
ready-person = { $name } { $block } { $pct }% de { $of } arbres ({ $low }-{ $high }%)
map-all = Parcelles: { $groups }
map-list = Carte { $group }: { $blocks } parcelles. Sans point { $point }, sans surface { $area }, plus de { $limit } donc contour à lever { $large }. Acheteurs: oui { $shared }, non { $kept }
map-point = sans point { $count }
rain-all = Pluie 10 j: { $groups }
rain-line-open = { $group } { $soaked } sur { $reporters } trempés: bon pour ouvrir
rain-line-hold = { $group } { $soaked } sur { $reporters } trempés: attendre
rain-line-few = { $group } { $reporters } réponses seulement
best = Vivants: { $alive }. Le plus de vides: { $gaps }. Le plus de silence: { $quiet }
cost = Messages du mois, tout le service: { $parts } parties{ $money }{ $share }. Téléphones en panne: { $failing }
cost-money = , prix { $cost }
week = Votre semaine: visites faites { $made }, à visiter { $left }, messages en attente { $waiting }{ $deadline }
week-owed = Semaine: visites { $made } faites, { $left } à faire, { $waiting } messages{ $deadline }. Promis: { $promises }
week-order = . Commander plants avant { $day }
last-list = { $name }: { $facts }
last-fact = { $day } { $source }{ $block } { $what }
last-none = Rien n'est encore dit de { $name }.
labour = { $name }, { $days } jours à venir: { $jobs }. La durée n'est pas notée.
labour-job = { $task } { $block } { $day }
labour-job-days = { $task } { $block } { $day } { $effort }j
labour-days = { $name }, { $days } jours à venir: { $jobs }. A un seul { $effort } jours de travail{ $busy }
labour-busy = . Occupé du { $from } au { $to }
labour-none = { $name } n'a pas de travail dans les { $days } jours.
whose = Fin { $digits }: { $people }. { $last }
whose-person = { $name } ({ $group }), accord { $consent }{ $other }
whose-other = , aussi { $digits }
whose-last = Dernier message { $day }
whose-never = Pas encore de message
whose-none = Aucun de vos planteurs n'a un numéro qui finit par { $digits }.
paid-none = { $group }: { $held } payé. Pas d'engrais à donner ou pas de prix. Envoyez ACHAT GROUPE { $group }, prix du sac, jour.
paid-all = Argent engrais: { $groups }
paid-line = { $group } { $held } sur { $total }
paid-list = Argent engrais { $group }: { $paid } sur { $of } ont payé, { $held } sur { $total }. A payer: { $people }{ $buying }
paid-whole = Argent engrais { $group }: les { $of } ont payé, { $held } sur { $total }{ $buying }
paid-person = { $name } { $cents }
paid-entered = Noté, payé en tout: { $people }. Faux? Renvoyez la bonne somme.
paid-told = { $name }, { $leader } a noté { $cents } payés par vous pour l'engrais. Faux? APPELEZ MOI. -{ $adviser }
paid-which = Qui a payé combien en tout? Envoyez PAYE, le nom, la somme.
buying-on = { ". " }Achat { $day }
buying-set = { $group } achète l'engrais { $day }: { $bags } sacs x { $price } = { $total }. Chacun: { $people }{ $left }
buying-left = { ". " }Reste { $kilograms } kg
buying-none = { $group } achète l'engrais { $day }, { $price } le sac. Rien n'est à donner.
buying-which = Envoyez ACHAT GROUPE, le groupe, le prix du sac et un jour à venir.
grant-none = Aucun paiement par étape dans le calendrier de vos groupes: demandez au bureau.
grant-list = Part { $part } { $group }, { $stand }/ha à { $months } mois: oui { $pass }, manque { $short }, sans visite { $days }j { $unseen }, trop jeune { $young }. { $people }
grant-whole = Part { $part } { $group }, { $stand }/ha à { $months } mois: oui { $pass }, trop jeune { $young }. Rien ne manque.
grant-short = { $name } manque { $trees }
grant-unseen = { $name } sans visite
grant-no-size = { $name } sans surface
grant-all = Paiements: { $groups }
grant-line = { $group } part { $part } oui { $pass } manque { $short } sans visite { $unseen }
train-none = { $group }: aucune formation notée. Envoyez FORMES, le travail et qui est venu.
train-none-of = { $group }: aucune formation notée pour { $work }.
train-waits = { $group } { $work }: à faire, mais jamais montré à { $people }. Pas de rappel pour eux. { $came } sur { $of } l'ont vu.
train-all = Formations: { $groups }
train-list = { $work } { $group } { $day }: { $came } sur { $of } sont venus. Absents: { $people }
train-whole = { $work } { $group } { $day }: les { $of } l'ont vu.
train-topics = Montré { $group }: { $topics }
train-topic = { $work } { $day } { $came } sur { $of }
train-entered = Noté, { $work } { $day }, { $count } venus: { $people }
train-which = Quel travail a été montré? Envoyez FORMES, le travail et les noms.
list-all = Manquent: { $groups }
list-group = { $group }, { $days } jours: nouvelles de { $told } sur { $of }. Manquent: { $people }
list-none = { $group }: personne ne manque. Travail pour { $of }, nouvelles en { $days } jours.
list-person = { $name } { $task }
allot-all = Plants: { $groups }
allot-list = Plants { $group }: { $people }
allot-none = { $group }: aucun plant en stock, aucun commandé.
allot-clone = { $clone } { $plants } en stock{ $ready }, { $ordered } commandés
allot-line = { $group } { $people }
allot-ready = { " " }dès { $day }
allot-share = { $name } { $clone } { $plants }
stock-which = Combien de plants, quel clone, disponibles quand? Envoyez STOCK, le clone, le nombre, le jour.

lesson-step = { $step }/{ $of } { $text } Après: SUITE
lesson-end = { $step }/{ $of } { $text }
lesson-plants-1 = Prenez des plants greffés du clone que votre conseiller nomme, avec l'étiquette. Les semis non greffés donnent moins.
lesson-plants-2 = Cherchez deux étages de feuilles, durs et vert sombre. Les feuilles molles fanent en route.
lesson-plants-3 = La pousse sort de l'oeil greffé, la greffe est fermée, la tige droite. Une pousse d'en dessous est du porte-greffe.
lesson-plants-4 = La terre du sachet est entière et humide, peu de racines en sortent. Laissez les plants secs ou cassés.
lesson-plants-5 = Comptez avec le chauffeur. Portez par le sachet, jamais par la tige. Ombre et eau jusqu'au jour de planter.
lesson-stumps-1 = Les stumps nus sèchent vite: plantez-les au plus tot. Jusque-là, à l'ombre dans des sacs mouillés.
lesson-stumps-2 = Les bons ont un seul pivot droit et un oeil vert. Beaucoup écartent les pivots fourchus ou tordus.
lesson-stumps-3 = Raccourcissez les racines de coté à 7,5-10 cm. Coupez loin du corps, les autres restent à distance.
lesson-stumps-4 = Dans le trou rempli faites un creux avec un baton, aussi profond que le pivot. Le bout ne doit pas remonter.
lesson-stumps-5 = L'oeil greffé reste 2-3 cm au-dessus du sol. Tassez la terre du bas vers le haut, puis arrosez.
lesson-pits-1 = Creusez sur les piquets, environ un mois avant de planter. Bonne terre d'un coté, terre du fond de l'autre.
lesson-pits-2 = Un trou ouvert est un piège: signalez-le, éloignez enfants et animaux jusqu'à ce qu'il soit rempli.
lesson-pits-3 = Remplissez environ 10 jours avant de planter: la bonne terre d'abord.
lesson-pits-4 = Du compost mur va dans les 30 cm du haut, si vous en avez. Engrais: seulement comme dit le conseiller, avec gants.
lesson-pits-5 = Faites une petite butte, la terre descend. Remettez le piquet au milieu: c'est la place du plant.
lesson-planting-1 = Arrosez les sachets la veille. Ne plantez pas tant que les feuilles du haut sont molles.
lesson-planting-2 = Ouvrez le trou à la profondeur du sachet. Coupez le fond du sachet avec ses racines. Lame loin du corps.
lesson-planting-3 = Posez droit, l'oeil greffé juste au-dessus du sol, tourné loin du soleil du matin et du soir.
lesson-planting-4 = Tirez le sachet vers le haut; la motte ne doit pas casser. Rebouchez et tassez sur les cotés, pas dessus.
lesson-planting-5 = Arrosez. Paillez autour sans toucher la tige. Ramenez tous les sachets. Les stumps nus se plantent autrement.
lesson-shoots-1 = Les pousses sous la greffe sont du porte-greffe, pas votre clone: otez-les à chaque passage.
lesson-shoots-2 = Au-dessus, otez les pousses de coté jusqu'à la hauteur des branches. Votre conseiller la nomme.
lesson-shoots-3 = Prenez-les molles et courtes: la main suffit, la plaie reste petite.
lesson-shoots-4 = Une grosse: coupe nette près de la tige, sans arracher. Lame loin de vous, les autres à distance.
lesson-shoots-5 = Gardez le bourgeon du haut et ses feuilles. En saison des pluies, pas en saison sèche. Ne grimpez pas.
lesson-branching-1 = Pour les arbres sans branches à 2,5-3 m au-dessus de la greffe. Des clones ramifient seuls plus tard: demandez.
lesson-branching-2 = Quand: 1,5 à 2 ans, sous les pluies, feuilles du haut dures. Beaucoup évitent mois secs, vent et arbres penchés.
lesson-branching-3 = Pliez les feuilles du dernier étage mur sur la pointe et liez, ou coupez à 3-4 folioles. Seulement comme montré.
lesson-branching-4 = Restez au sol: ne grimpez pas, ne pliez pas la tige. Ce qui est trop haut attend votre conseiller.
lesson-branching-5 = Regardez après 2 à 3 semaines. Dès les pousses otez le lien, sinon la tete meurt. Puis RAMIFIES et le nombre.
lesson-girth-1 = Prenez un mètre, ou une ficelle et un repère gradué. Avec une marque au tour qui compte, un regard suffit.
lesson-girth-2 = Mesurez chaque arbre à la meme hauteur, celle de mon SMS. Un baton de cette longueur aide.
lesson-girth-3 = Autour du tronc, à plat et serré, pas sur une plaie ou un noeud. Ne tirez pas sur la ficelle.
lesson-girth-4 = Choisissez en comptant, les minces aussi. Qui choisit à l'oeil prend les plus beaux et se trompe.
lesson-girth-5 = Notez chaque tour, puis envoyez tout, comme TOUR 41 43 39. Je dirai si cela suffit.
nudge-how = { " " }Comment? Envoyez COMMENT.

stopped-shared = C'est fait. Plus de rappels à ce numéro, pour { $people }. Les données restent. DEBUT pour revenir, EFFACEZ MOI pour enlever votre nom.
complaint-told = Désolé, { $name }. Noté sous le no { $number }: { $adviser } le sait et répond au plus tard { $day }.
stand-short = Encore { $short } sur { $ordered } à venir. { $handle } { "" }
stand-arrived = { $handle } { "" }
handle-bag = Ombre, eau, portez par le sachet.
handle-stump = Sacs mouillés, ombre, plantez vite.
handle-any = Ombre et eau.
pick-up-set = { $group }, retrait { $day }, dit à { $count }: { $people }
pick-up-told = { $name }, { $plants } plants pour vous { $day }. Prenez une charrette et de l'ombre. Comptez, puis écrivez: recu et le nombre. -{ $adviser }
pick-up-none = { $group }: rien à retirer. Il faut des plants en stock et des commandes fermes: STOCK.
pick-up-which = Quel jour à venir? Envoyez JOUR DE RETRAIT, le groupe et le jour.
order-pick-up = { $name }, les plants se retirent { $day }, { $plants } pour vous. Pas venus? Dites-le. -{ $adviser }
