# Ce qui s'imprime. From memory; needs a native reader who knows rubber.

sheet-meeting = Feuille de réunion, { $group }
sheet-shares = Parts d'engrais, { $group }
sheet-pickup = Retrait des plants, { $group }
sheet-visits = Visites, { $group }
sheet-holds = Personnes laissées en paix, { $group }

sheet-number = Feuille { $number }
sheet-printed = imprimée le { $day }
sheet-text-back = Renvoyez les lignes par SMS: FEUILLE { $number }: 3 morts 20, 5 sarclé
sheet-of-people = { $people } personnes, { $blocks } parcelles
sheet-bags = { $bags } sacs de { $weight } kg achetés ensemble, { $left } kg restent; chacun seul: { $alone } sacs
sheet-price = { $money } en tout, { $held } payés à ce jour
sheet-plants = { $plants } plants commandés, { $wished } souhaités en plus
sheet-slots = Quatre planteurs par demi-heure; gardez les plants à l'ombre et la motte entière.
sheet-restricted = Pour le bureau et les conseillers seulement. Ne pas laisser traîner.

column-row = No
column-farmer = Planteur
column-block = Parcelle
column-planted = Plantés
column-alive = Vivants
column-gaps = Vides
column-due = À faire
column-dead = Morts
column-filled = Remplacés
column-weeded = Sarclé
column-fed = Engrais
column-signature = Signature ou pouce
column-trees = Arbres
column-grams = g par arbre
column-kilograms = kg
column-bags = Sacs seul
column-money = À payer
column-paid = Payé
column-received = Reçu
column-time = Heure
column-clone = Clone
column-ordered = Commandés
column-got = Reçus
column-spare = En plus
column-place = Lieu
column-phone = Fin du numéro
column-reason = Pourquoi
column-bring = À emporter
column-notes = Notes
column-since = Depuis
column-until = Jusqu'au

bring-knife = couteau propre, sachets pour échantillons
bring-count = feuille de réunion, pour compter ensemble
bring-tape = mètre et ficelle
bring-ear = du temps pour écouter
hold-grief = un décès dans la famille
hold-open = jusqu'au mot du conseiller
