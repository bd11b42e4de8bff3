# Texts of the office's pages. They may be of any length and have any letters; no SMS says them. From memory; needs a native reader.

# Door
page-come-in = Entrer
page-your-name = Votre nom entier, comme sur la liste
page-send-code = Envoyer un code à mon téléphone
page-door-help = Pas de téléphone, ou la ligne est coupée? Sur l'ordinateur même, le bureau peut demander un code: budwood office code
page-code-sent = Si ce nom peut regarder ici, un code part vers son téléphone. Il vaut dix minutes.
page-code = Code
page-code-wrong = Ce code n'est pas bon, ou il est trop vieux.
page-other-name = Un autre nom, ou un nouveau code
page-begin = À la première page
page-other-host = Cette adresse n'est pas la nôtre. Prenez celle que votre bureau vous a donnée.
page-other-origin = Ce formulaire ne vient pas d'une de nos pages. Rien n'a été fait.
page-old-form = Ce formulaire est trop vieux. Rien n'a été fait.
page-too-many = Il y a trop de monde à la porte. Essayez dans une minute.
page-busy = La page ne peut être montrée pour le moment. Essayez dans une minute.
page-not-yours = Cette page n'est pas pour vous.
page-not-there = Cette page n'existe pas.

# Every page
page-skip = Au contenu
page-menu = Pages
page-go-out = Sortir
page-today = Aujourd'hui
page-queue = Messages en attente
page-groups = Groupes
page-sick = Arbres malades
page-season = Saison et pluie
page-stock = Plants et engrais
page-line = La ligne
page-about = Qui
page-what = Quoi
page-is = Est
page-who = Qui
page-group = Groupe
page-why = Pourquoi
page-day = Jour
page-block = Parcelle
page-number = Numéro
page-count = Nombre
page-yes = oui
page-no = non
page-nothing = rien
page-never = jamais
page-unknown = inconnu
page-pct = { $pct } %
page-sum = Somme
page-late = en retard
page-new = nouveau
page-old = vieux
page-very-old = très vieux
page-look-here = à voir
page-minutes-ago = il y a { $count } min
page-hours-ago = il y a { $count } h
page-days-ago = il y a { $count } jours

# Today
page-waiting = Messages qui attendent quelqu'un
page-none-waits = Aucun message ne vous attend.
page-hours = Heures
page-gathers = Maladie qui s'étend
page-none-gathers = Aucune maladie ne s'étend.
page-sickness = Maladie
page-reports = Annonces
page-since = Depuis
page-promises = Promis
page-none-promised = Rien n'est promis.
page-to-whom = À qui
page-by = Pour le
page-words = Dans vos mots
page-visits = Qui visiter d'abord
page-none-to-visit = Personne à visiter pour le moment.

# The line
page-line-well = La ligne va bien.
page-line-held = Les messages sont retenus jusqu'à ce que quelqu'un les libère: budwood release
page-clock = L'heure de l'ordinateur est douteuse: les rappels attendent.
page-leaving = Messages qui attendent de partir: { $count }
page-gateways = Passerelles
page-gateway = Passerelle
page-last-in = Dernier reçu
page-last-out = Dernier parti
page-oldest = Attend le plus
page-refused = Refus de suite
page-month = Ce mois
page-parts = Parties
page-money = Argent
page-budget-gone = Du budget est parti
page-held = Pas dit, depuis le démarrage
page-held-answers = Réponses à des téléphones qui écrivent trop
page-held-strangers = Réponses à des inconnus
page-held-unpaid = Messages au-delà de l'argent du jour ou du mois
page-held-machines = Réponses à des machines

# Groups
page-farmers = Paysans
page-planted-farmers = Ont planté
page-alive-pct = Vivants
page-visited-pct = Compté en visite
page-gaps = Manquants
page-due = À faire
page-late-jobs = En retard
page-quiet = Silencieux
page-sick-farmers = Malades
page-unreached = Pas joints
page-figures = En chiffres
page-season-of = La saison par semaines
page-sign-done = fait
page-sign-seen = vu en visite
page-sign-asked = demandé par message
page-sign-late = en retard
page-members = Paysans du groupe
page-blocks = Parcelles
page-living = Arbres vivants
page-due-jobs = Travaux à faire
page-heard = Dernières nouvelles
page-coming = Messages des 14 prochains jours, si le travail n'est pas annoncé avant
page-none-coming = Aucun message n'est prévu pour les 14 prochains jours.
page-job = Travail
page-due-day = À faire dès
page-not-before = Message pas avant
page-why-due = c'est le moment
page-why-again = déjà demandé, sans réponse

# A farmer
page-consent = Accord
page-consent-given = donné le { $day }
page-consent-withdrawn = retiré le { $day }
page-consent-unknown = pas noté: aucun rappel ne part
page-language = Langue
page-phones = Téléphones finissant par
page-hold = Laissé en paix
page-hold-yes = oui, en ce moment
page-land = Terrain
page-planted-on = Planté
page-sick-trees = Arbres malades
page-job-on = { $task } { $day }
page-ready = Quand les arbres seront sans doute prêts à ouvrir: quatre fois sur cinq dans la barre; le trait est le jour probable
page-range = { $block }: probable { $likely }, entre { $earliest } et { $latest } ({ $trees } arbres mesurés le { $day })
page-facts = Ce qui a été dit
page-none-told = Rien n'a encore été dit.
page-source = Source
page-told-by = Dit par
page-told-on = Dit le
page-fact = Un fait
page-instead-of = Au lieu de
page-text = Le message
page-asked-for = demandé par message: { $task }
page-put-off = remis: { $task }
page-warned = averti: { $ailment } tout près
page-under-living = { $name } { $block }: d'où viennent les arbres vivants
page-under-sick = { $name } { $block }: d'où viennent les arbres malades
page-fact-line = { $day } { $block }: { $what }

# Sick trees
page-none-sick = Aucune maladie connue qui ne soit finie.
page-trees = Arbres
page-seen-on-visit = Vu en visite
page-on-map = Sur la carte
page-map = Carte des parcelles avec arbres malades; le tableau dessous dit la même chose
page-map-signs = Triangle: racines. Rond: feuilles. Carré: pousses. Losange: termites. Étoile: autre. Plein: vu en visite. Plus: rien de dit. Le numéro est celui du tableau.
page-north = N

# Season
page-rains = Pluies
page-rains-begin = Début des pluies
page-rains-end = Fin des pluies
page-window = Plantation
page-open-since = ouverte depuis le { $day }
page-window-shut = pas ouverte
page-rain-told = Ce qui est dit
page-rain-reports = Pluie des quatre dernières semaines
page-none-rain = Personne n'a parlé de pluie ces quatre semaines.
page-ground = Sol
page-soaked = trempé
page-dry = pas de pluie
page-millimetres = mm
page-ahead = { $group }: les huit semaines à venir
page-week-from = Semaine du
page-jobs-blocks = Travaux, et sur combien de parcelles
page-job-count = { $task } ({ $count })

# Plants and fertiliser
page-plants = { $group }: plants pour les plantations à venir
page-none-wanted = { $group }: aucun plant n'est demandé.
page-clone = Clone
page-planting = Plantation
page-plants-all = Plants
page-firm = Commandés
page-wished = Souhaités
page-nursery = { $group }: plants des pépinières
page-none-raised = { $group }: rien n'est dit des pépinières.
page-supply = Il y a
page-ready-on = Prêts le
page-ordered = Commandés
page-shared = Partagés
page-feed = { $group }: engrais à donner, { $pooled } sacs ensemble ou { $alone } chacun pour soi
page-none-feed = { $group }: pas d'engrais à donner.
page-kilograms = kg

# A text that waits
page-no-reading = Rien ne peut en être noté tel quel.
page-next = Suivant (N)
page-open-jobs = Travaux ouverts
page-last-facts = Dernières choses dites
page-store = Noter
page-ask = Redemander à l'expéditeur (A)
page-close = C'est réglé (C)
page-pass = Transmettre (P)
page-pass-to = Transmettre à
page-fix = C'est faux
page-fix-do = Corriger
page-right-number = Le bon nombre; laissez vide pour retirer le fait
page-reason = Pourquoi
page-counts-no-more = Ceci a été corrigé et ne compte plus.
page-not-done = Impossible: c'est déjà fait, ou ce n'est pas à vous.
