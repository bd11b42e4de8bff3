# Portuguese (Brazil). From memory; needs a native reader who knows rubber.
# Every text fits one SMS of 160 GSM characters at its longest values; a test says so.
# Letters: é and à are in the GSM alphabet and stay; the others with marks are not, and would more
# than halve an SMS, so they are written bare (nao, voce, talhao), as people do in texts.
# Plurals: 0 and 1 are singular (CLDR).

## Numbers and languages

decimal = ,
years-ahead = 0
language-name = Portugues
language-called = portugues, portuguese, portugais, portugis, bo dao nha, tieng bo dao nha, portuket, โปรตุเกส, ภาษาโปรตุเกส
languages = Linguas: { $languages }. Responda IDIOMA e a lingua, como IDIOMA pt
language-set = De agora em diante escrevo em portugues.

## Days

weekday-1 = seg
weekday-2 = ter
weekday-3 = qua
weekday-4 = qui
weekday-5 = sex
weekday-6 = sab
weekday-7 = dom
month-1 = jan
month-2 = fev
month-3 = mar
month-4 = abr
month-5 = mai
month-6 = jun
month-7 = jul
month-8 = ago
month-9 = set
month-10 = out
month-11 = nov
month-12 = dez
day = { $weekday } { $day } { $month }
day-year = { $day } { $month } { $year }
month-year = { $month } { $year }
span = { $from } a { $to }

## What was stored, read back

read-back = { $block }: { $facts }. { $stand }Errado? Responda NAO
read-back-rain = { $facts }. Agradecemos. Errado? Responda NAO
clause-on = { $clause } { $day }
said-part = { $clause } (uma parte)
said-cleared = terreno limpo
said-lined = estacas postas
said-lined-count = { $count ->
    [one] { $count } estaca
   *[other] { $count } estacas
  }
said-holes-dug = { $count ->
    [one] { $count } cova aberta
   *[other] { $count } covas abertas
  }
said-received-plants = { $count ->
    [one] { $count } muda recebida
   *[other] { $count } mudas recebidas
  }
said-received-plants-uncounted = mudas recebidas
said-received-fertiliser = adubo recebido{ $amount }
said-received = entrega recebida
said-planted = { $count ->
    [one] { $count } plantada
   *[other] { $count } plantadas
  }
said-dead = mais { $count ->
    [one] { $count } arvore morta
   *[other] { $count } arvores mortas
  }
said-dead-none = nenhuma arvore morta
said-replaced = { $count ->
    [one] { $count } replantada
   *[other] { $count } replantadas
  }
said-weeded = capina feita
said-fertilised = adubo posto{ $amount }
said-sprayed = pulverizado
said-pruned = brotos tirados
said-branched = { $count ->
    [one] { $count } arvore com galhos
   *[other] { $count } arvores com galhos
  }
said-branched-uncounted = arvores com galhos
said-not-branched = { $count ->
    [one] { $count } arvore sem galhos
   *[other] { $count } arvores sem galhos
  }
said-not-branched-uncounted = arvores sem galhos
said-branch-induction = inducao de copa em { $count }
said-branch-induction-uncounted = inducao de copa feita
said-girth = circunferencia de { $number ->
    [one] { $number } arvore
   *[other] { $number } arvores
  }, média { $mean } cm
said-girth-share = circunferencia: { $count } de { $of } na medida
said-height = altura de { $number ->
    [one] { $number } arvore
   *[other] { $number } arvores
  }, média { $mean } cm
said-disease = visto: { $ailment }
said-disease-count = { $ailment } em { $count ->
    [one] { $count } arvore
   *[other] { $count } arvores
  }
said-disease-none = nenhuma arvore doente
said-damage = dano: { $cause }
said-damage-count = dano ({ $cause }) em { $count ->
    [one] { $count } arvore
   *[other] { $count } arvores
  }
said-damage-none = nenhum dano
said-cover-sown = cobertura semeada
said-intercrop-sown = plantio de { $species }
said-intercrop-sown-unnamed = lavoura plantada
said-intercrop-none = sem lavoura
said-tapping-opened = { $count ->
    [one] { $count } arvore aberta
   *[other] { $count } arvores abertas
  }
said-not-done = ainda nao feito: { $job }
said-not-done-unnamed = ainda nao feito
said-rain-soaked = chuva boa
said-rain-none = sem chuva
said-rain-mm = { $mm } mm de chuva
amount = , { $value } { $unit }

## How the block stands after it

stand-planted = { $total } ao todo. { "" }
stand-room = { $total } ao todo, cabem mais { $room }. { "" }
living = { $first } de { $planted }
living-filled = { $first } + { $filled } de { $planted }
stand-dead = { $dead } mortas ao todo, { $living } arvores vivas. { "" }
stand-alive = { $living } arvores vivas. { "" }
stand-filled = { $living } arvores vivas, ainda { $gaps ->
    [one] { $gaps } falha
   *[other] { $gaps } falhas
  }. { "" }
stand-next = Fazer de novo por volta de { $day }. { "" }
stand-ready = Sangria talvez de { $earliest } a { $latest }. { "" }
stand-meets = A medida basta. { $adviser } olha antes de abrir. { "" }
stand-close = Quase no ponto: tire a medida de todas as arvores antes de abrir. { "" }
stand-early = Cedo para dizer quando sangrar. { "" }
stand-look = Olhe os brotos a partir de { $day }. { "" }
stand-sick = { $adviser } ja sabe. Nao arranque nem aplique nada. { "" }
stand-harm = { $adviser } ja sabe. Longe dos galhos pendurados. { "" }
stand-sick-untold = Nao arranque nem aplique nada. { "" }
stand-told = { $adviser } ja sabe. { "" }
stand-harm-untold = Longe dos galhos pendurados. { "" }
stand-label = Siga o rotulo. Lave as maos. { "" }

unit-ha = ha
unit-acre = acres
unit-rai = rai
unit-m2 = m2
unit-kg = kg
unit-g = g
unit-bag = sacos
unit-tin = latas/baldes
unit-cup = copos/punhados
unit-l = l
unit-m = m
unit-cm = cm
unit-mm = mm
unit-inch = polegadas
unit-foot = pés
land = { $hectares } ha

ailment-white_root = raiz branca
ailment-leaf_fall = queda de folhas
ailment-pink = rubelose
ailment-leaf_spot = manchas nas folhas
ailment-mildew = oidio
ailment-dieback = seca dos ponteiros
ailment-termites = cupins
ailment-other = doenca

cause-wind = vento
cause-fire = fogo
cause-flood = enchente
cause-drought = seca
cause-animals = animais
cause-theft = roubo
cause-termites = cupins
cause-other = outros

## Correcting

changed = Mudado em { $block }: { $facts }. { $stand }Errado? Responda NAO
moved = Passado de { $old } para { $block }: { $facts }. { $stand }Errado? Responda NAO
block-facts = { $block }: { $facts }
person-facts = { $name } { $block }: { $facts }
confirm-many = { $people }? Responda 1 sim, 2 nao
sheet-none = Nao ha folha { $number } sua. Escreva como no papel: FOLHA, o numero, a linha e a noticia: FOLHA 12: 3 mortas 20
sheet-rows = A folha { $number } tem linhas 1 a { $rows }. Escreva: FOLHA { $number }: 3 mortas 20, 5 capinei
many-told = Anotado: { $people }. Errado? Envie NAO
leader-told = { $name }, { $leader } informou de voce { $facts }. Errado? Responda NAO em 7 dias. -{ $adviser }
leader-took-back = { $name }, { $leader } retirou o que informou de voce { $facts }. -{ $adviser }
contested-notice = { $name } ({ $group }) diz que nao é assim, o que { $leader } informou de { $facts }. Foi posto de lado.
fixed-notice = { $adviser } corrigiu { $block }: { $facts }. Errado? Envie LIGUE PARA MIM
fixed-notice-leader = { $adviser } corrigiu em { $block }: { $facts }. Nao e assim? Responda NAO em 7 dias.
fixed = Mudado em { $block }: { $facts }. { $stand }Para desfazer: DESFAZER { $number }
fixed-moved = De { $old } para { $block }: { $facts }. { $stand }Para desfazer: DESFAZER { $number }
put-back = De novo como antes em { $block }: { $facts }. { $stand }
taken-back = Anulado: { $facts } em { $block }. { $stand }
taken-back-ask = Anulado: { $facts } em { $block }. O que esta certo? Envie de novo, como { $example }
taken-back-count = Anulado: { $facts } em { $block }. Qual é o numero certo?
nothing-to-undo = Nada para anular. Para informar, o trabalho e um numero, como { $example }
unsure-change = O que esta errado? Envie como: { $example }

## Asking before storing

confirm = { $block }: { $facts }? { $why }Responda 1 sim, 2 nao
confirm-for = { $name } { $block }: { $facts }? { $why }Responda 1 sim, 2 nao
why-area = No terreno cabem umas { $holds }. { "" }
why-alive = So { $alive } arvores estao vivas. { "" }
why-gaps = So { $gaps } falhas sao conhecidas. { "" }
why-large = É muito para { $alive } arvores. { "" }
why-again = Voce ja disse { $count }. { "" }
why-odd = { $value } cm, esta certo? { "" }
why-shrunk = Antes a média era { $before } cm. { "" }
why-inches = Isso é cm, nao polegada? { "" }
why-heaped = Todos acabam em 0 ou 5: confira bem. { "" }
why-sum = Com galhos + sem galhos = { $told }, vivas { $alive }. { "" }
why-thin = Média { $mean } cm: fina demais para sangrar. { "" }
why-feed = É mais de 1 kg por arvore. { "" }
why-before = É antes do plantio. { "" }
why-not-planted = Ainda nao ha nada plantado la. { "" }
why-word = Li "{ $from }" como "{ $to }". { "" }
why-none = { "" }
ask-block = Qual talhao: { $blocks }? Responda com o nome.
ask-block-unknown = Nao conheco o talhao { $unknown }. Qual é: { $blocks }?
no-blocks = Sua terra ainda nao esta na minha lista, { $name }. { $adviser } vai colocar. Nada se perde.
ask-count = Quantas { $facts } em { $block }? Responda com o numero.
ask-count-range = { $low } ou { $high } { $facts } em { $block }? Responda com um numero.
ask-values = Quais circunferencias em cm em { $block }? Responda com os numeros, como 41 43 39
ask-values-height = Quais alturas em cm em { $block }? Responda com os numeros, como 210 240
ask-date = Em que dia? Responda como 12 maio ou 3 dias atras.
ask-for-whom = Para quem? { $people }. Responda com o numero.
dropped = Nao anotado. Envie de novo quando quiser, como { $example }
bare-planted = arvores plantadas
bare-dead = arvores mortas
bare-replaced = replantadas
bare-holes_dug = covas abertas
bare-tapping_opened = arvores abertas
bare-disease = arvores doentes
bare-branched = arvores com galhos
bare-not_branched = arvores
bare-other = arvores

## Not understood, help, leaving

unclear = Desculpe, nao entendi. Escreva o trabalho, um numero e o talhao, como { $example }
stranger = Nao conheco este numero. Fale com seu técnico para colocar na lista.
help = Diga o que fez: { $example }, capina B, adubo B. Pergunte: O QUE FAZER, LIGUE PARA MIM, IDIOMA. Errado: NAO. Fim: PARAR. -{ $adviser }
help-adviser = Por grupo: SITUACAO ATRASO MORTAS FALHAS PEDIDO SACOS DOENCA RAIZ CHUVA CLONE MAPA; SILENCIO VISITA SEMANA CUSTO FILA. Depois: MAIS. Fim: PARAR
help-adviser-more = Por produtor: HISTORICO SUSPENDER RETOMAR PERDIDO. PROXIMO, FEITO, COMPARAR, QUEM e digitos. Grupo: VENTO, FOGO, JANELA, AVISAR. MAIS
help-adviser-people = NOVO DONO Keti A Pira. DIVIDIR Keti A Pira 240. NOVO MEMBRO, grupo, nome, numero. SAI DO GRUPO Keti. SEGUNDO TELEFONE, nome, numero. MAIS
help-adviser-deeds = Acoes: DIGA, grupo e o recado. ENTREGA e nome. ligar Keti sexta, CUMPRIDO. Em visita: de Keti: mortas 4 A. Depois de PROXIMO: o numero, PASSAR e nome
help-clerk = Para { $group }: SITUACAO ATRASO SILENCIO MORTAS FALHAS PEDIDO MAPA QUEM. Mensagens: FILA, PROXIMO, depois FEITO. Fim: PARAR
help-viewer = Para { $group }: SITUACAO MORTAS FALHAS PEDIDO CLONE DOENCA CHUVA MAPA. Depois: MAIS. Fim: PARAR
help-look-more = Tambem: ATRASO SILENCIO VISITA SACOS RAIZ VENTO FOGO COMPARAR. Por produtor: HISTORICO
help-leader = Escreva o feito: { $example }. Por um membro: Nilo mortas 3. Pergunte: LISTA, O QUE FAZER, LIGUE PARA MIM. Erro: NAO. Fim: PARAR -{ $adviser }
help-nursery = Mudas: ESTOQUE GT1 600. Saida: DESPACHADO GT1 200. Pergunte: ESTOQUE, PARTILHA, LIGUE PARA MIM. Fim: PARAR. -{ $adviser }
not-yours = Isso nao e para voce aqui, { $name }; { $adviser } pode. O que voce pode: AJUDA
example = mortas 8 { $block }
stopped = Pronto. Sem mais lembretes para este numero. Seus dados ficam. INICIAR para voltar, APAGAR MEUS DADOS para tirar o nome.
started = Boas-vindas, { $name }. Vao chegar lembretes para seus talhoes, um por semana mais ou menos. Para sair quando quiser: PARAR. -{ $adviser }
welcome = Bom dia { $name }, aqui Budwood: SMS sobre o trabalho no seringal, um por semana mais ou menos. Responda do seu jeito. Outro idioma: IDIOMA. Fim: PARAR. -{ $adviser }
same-again = Isso eu ja tenho, agradeco.

## Farmers ask

now = { $name }, agora: { $tasks }. Avise quando fizer. -{ $adviser }
now-nothing = { $name }, nada a fazer agora. Depois: { $task } { $block } por volta de { $day }. -{ $adviser }
now-none = { $name }, nada a fazer e ainda sem data. Escreva o que fez, como { $example }. -{ $adviser }
my-blocks = { $blocks }
my-block = { $block }: { $living } vivas, plantio { $day }
my-block-empty = { $block }: ainda sem plantio
when-task = { $task } em { $block }: por volta de { $day }. -{ $adviser }
when-tap = { $name }, { $block } talvez esteja no ponto de sangria em { $likely }, entre { $earliest } e { $latest }. Isso vem de { $trees } arvores; a proxima medida diz mais. -{ $adviser }
when-tap-unknown = { $name }, faltam medidas de { $block }, entao nao posso dizer. Tire as medidas quando eu pedir. Nao sangre antes que { $adviser } veja.
when-tap-early = { $name }, ainda e cedo para dizer quando sangrar { $block }: { $trees } arvores dizem pouco. Tire as medidas quando eu pedir. Nao sangre antes que { $adviser } veja.
how-many-plants = Para { $area } umas { $points } mudas; encomende { $order } para cobrir perdas. As estacas dao o numero certo. -{ $adviser }
how-much-feed = { $block }: { $dose }. Capine antes, solo umido, em roda { $ring }. -{ $adviser }
feed-sum = { $trees } x { $grams } g = { $kilograms } kg
feed-doses = { $trees } arvores, { $products } por arvore: { $kilograms }
feed-brief = { $trees } x { $products } g = { $kilograms } kg
feed-grams = { $product } { $grams } g
feed-weight = { $kilograms } kg
feed-ring = sob a ponta das folhas, no maximo a 1 m do tronco
how-much-unknown = Diga a area, como: quantas mudas para 1,2 ha. Ou pergunte a { $adviser }: LIGUE PARA MIM
may-tap-no = Ainda nao, { $name }: { $block } abre com { $girth } cm de volta em { $share }% das arvores. Arvore fina sangrada continua fina. -{ $adviser }
may-tap-no-usual = Ainda nao, { $name }: { $block } abre em geral com uns { $girth } cm em { $share }% das arvores, mas { $adviser } decide. Arvore fina sangrada continua fina.
may-tap-check = { $block } esta perto, { $name }. { $adviser } mede antes de abrir. Nao sangre ainda.
may-plant-wait = Espere, { $name }. Ainda nao avisamos para plantar em { $group }. Guarde as mudas na sombra e molhadas. -{ $adviser }
may-plant-yes = Sim, { $name }: o aviso de plantio veio { $day }. Plante em solo umido, até 3 dias depois de receber as mudas. -{ $adviser }
may-fill-yes = Sim: replante { $block } até { $day } com solo umido, mesmo clone, mudas fortes. -{ $adviser }
may-fill-wait = Agora nao: resta pouca chuva para mudas novas em { $block }. De novo a partir de { $day }. -{ $adviser }
may-fill-late = Melhor nao em { $block }: depois de { $months } meses as mudas novas ficam pequenas na sombra. Pergunte a { $adviser }.
may-spray = Nao dou conselho de veneno por SMS. Siga rotulo e lei local, procure pessoa treinada. Cubra o corpo, sem vento, longe da casca e da agua. Escreva LIGUE PARA MIM
may-other = Melhor perguntar a { $adviser }. Escreva LIGUE PARA MIM e alguém liga.
may-yes = Sim, { $name }: { $task } em { $block } é para agora, até { $day }. -{ $adviser }
who = Esta é a linha de mensagens da seringueira de { $adviser }. Nunca pedimos dinheiro nem senha. PARAR para sair, AJUDA para ver as palavras.
my-data = Guardamos: nome, este numero, grupo { $group }, { $blocks }, seus relatos. Aceitou SMS: { $consent }, compradores: { $sharing }. Errado? Escreva LIGUE PARA MIM
consent-none = nao dado
share-given = Anotado, { $name }: um comprador pode saber seu nome e onde fica sua terra. Para voltar atras: PARTILHAR NAO. -{ $adviser }
share-refused = Anotado, { $name }: nenhum comprador fica sabendo de voce nem da sua terra. Para mudar: PARTILHAR SIM. -{ $adviser }
share-ask = { $name }, um comprador pode saber seu nome e onde fica sua terra? Agora: { $sharing }. Responda PARTILHAR SIM ou PARTILHAR NAO. -{ $adviser }
sharing-yes = sim
sharing-no = nao
call-me = { $name }, { $adviser } vai ligar. Se alguém estiver em perigo, va primeiro para um lugar seguro.
call-me-untold = { $name }, agora nao consigo avisar ninguém: ligue por conta propria. Se alguém estiver em perigo, va primeiro para um lugar seguro.
call-me-notice = Ligue para { $name } ({ $group }), numero termina em { $digits }: pedido { $day }.
alarm-notice = Ligue logo para { $name } ({ $group }), numero termina em { $digits }: a mensagem de { $day } pode ser de { $alarm }.
alarm-grief = morte
alarm-danger = perigo
alarm-illness = doenca
alarm-complaint = reclamacao
alarm-money = dinheiro
alarm-fire = fogo
alarm-snake = picada de cobra
alarm-number = numero novo ou telefone perdido
matter-notice = { $name } ({ $group }), numero termina em { $digits }, escreveu { $day }: { $alarm }. Para ler: PROXIMO
concern-call-me = pede ligacao
concern-question = pergunta
concern-unclear = nao entendida
first-fire = Tire todos de perto do fogo e da fumaca. Grite por ajuda. Nao apague sozinho. { $told }
first-snake = Mexa-se pouco e va logo ao posto de saude. Nao corte, nao chupe, nao amarre. { $told }
first-danger = Va primeiro para um lugar seguro e chame gente por perto. { $told }
first-illness = Se for grave, va ja ao posto de saude. Se sangrar, aperte com pano limpo. { $told }
told-adviser = Avisei { $adviser }.
told-nobody = Ninguém foi avisado: peca ajuda a quem estiver perto.
grief = { $name }, meus sentimentos. { $told } Sem lembretes até { $adviser } dizer.
told = Obrigado, { $name }. Avisei { $adviser }, que pode ler sua mensagem.
not-told = { $name }, nao sei responder e nao consegui avisar { $adviser }. Pergunte em pessoa.
only-done = So anoto o trabalho que voce ja fez. Quando fizer, escreva como { $example }
sick-notice = { $name } { $block } ({ $group }): { $facts }.
cluster-notice = { $group }: { $ailment } em { $count } lugares desde { $day }. Veja antes. Depois AVISAR { $group } avisa os vizinhos. Sem pulverizar ainda.
warn-ask = { $group }: { $ailment } em { $count } lugares. Se ja viu, pedimos a { $blocks ->
    [one] { $blocks } talhao vizinho
   *[other] { $blocks } talhoes vizinhos
  } para olhar. Responda SIM { $code }
warn-done = { $blocks ->
    [one] { $blocks } talhao vizinho
   *[other] { $blocks } talhoes vizinhos
  } de { $group } vao olhar: { $ailment }.
warn-none = Sem foco de doenca em { $group } agora, ou sem arvores por perto. Lista: DOENCA { $group }
girth-notice = { $name } { $block } ({ $group }): as medidas estao uns { $months } meses atras do normal. Vale olhar.
open-notice = { $name } { $block } ({ $group }): de { $trees } arvores, { $share }% ja dao sangria. Olhe antes. Depois escreva por { $name }: abertas e o numero.
no-answer = Nao sei responder isso. { $adviser } pode ajudar: LIGUE PARA MIM. Para o proximo trabalho escreva: O QUE FAZER
price-none = Nao tenho precos e nao adivinho. Pergunte onde se compra borracha, ou a { $adviser }: LIGUE PARA MIM. Proximo trabalho: O QUE FAZER
later = Certo, { $name }: { $task } em { $block } de novo por volta de { $day }. -{ $adviser }
nothing-open = Nada espera resposta. Para o proximo trabalho escreva: O QUE FAZER
done = Certo, { $name }. Anotado como feito { $day }: { $task } em { $block }. Errado? Responda NAO
erase-ask = Seu nome, telefone e mensagens serao apagados para sempre. Para fazer isso responda SIM { $code }
erased = Pronto: nome, telefone e mensagens apagados. Os dados do talhao ficam, sem seu nome. Copias antigas guardam tudo isso até serem apagadas.
nothing-held = Nao temos nome para este numero. Nao ha mais nada para apagar.
code-wrong = Esse codigo nao esta certo. Nada foi feito.
code-locked = Codigos demais ou errados. Nada foi feito; para isto nenhum codigo vale por um dia. Nao foi voce? Avise o escritorio.
visit-ask = Para anotar por { $name } e outros até a noite responda SIM { $code }. Nao pediu isto? Nao responda, avise o escritorio.
office-code = { $code } abre as paginas do escritorio por { $minutes } minutos. Nao passe a ninguem. Nao pediu? Avise o escritorio.
stop-ask = Sem mais mensagens, mesmo com um produtor em perigo? Entao responda SIM { $code }
held-back = Muitas mensagens. Respondo de novo mais tarde. Se houver perigo, ligue e peca ajuda.
digest = { $count ->
    [one] { $count } aviso a mais
   *[other] { $count } avisos a mais
  } nesta hora. Pergunte a: { $people }

## Jobs in one or two words

job-order_plants = pedir mudas
job-dig_pits = abrir covas
job-plant = plantar
job-survival_check = contar perdas
job-backfill = replantar
job-weed = capinar
job-feed = adubar
job-prune = desbrotar
job-induce_branching = formar copa
job-look_at_induced = ver brotos
job-root_check = ver raizes
job-girth_census = medir tronco
job-clear = limpar terra
job-line = marcar linhas
job-mulch = cobrir o pé
job-firebreak = aceiro
job-count_tall = contar altas
job-get_ready = preparar
job-open = abrir sangria
job-fill_pits = encher covas
job-sow_cover = cobertura
job-leaf_check = ver folhas
job-intercrop = lavoura
job-open_rest = abrir o resto
job-rain_watch = avisar chuva
job-hand_over = encerrar
walk-every = 1 em cada { $every } desde a no. { $from }
walk-all = todas as linhas
pit-edge = { $cm } cm
pit-round = redondas { $wide } cm, fundo { $deep }
datum-ground = { $cm } cm do chao
datum-union = { $cm } cm do enxerto
usual = uns { $value }
kind-cleared = limpeza
kind-lined = marcacao
kind-holes_dug = covas
kind-received = entrega
kind-planted = plantio
kind-dead = contagem
kind-replaced = replantio
kind-weeded = capina
kind-fertilised = adubo
kind-sprayed = aplicacao
kind-pruned = desbrota
kind-branched = galhos
kind-not_branched = galhos
kind-branch_induction = inducao
kind-girth = medida
kind-height = medida
kind-disease = vistoria
kind-damage = vistoria
kind-cover_sown = semeadura
kind-intercrop_sown = semeadura
kind-tapping_opened = abertura
kind-not_done = trabalho
kind-rain = chuva

## Nudges. One job, a date, one reply word.

nudge-order_plants = { $name }, para { $block } encomende { $trees } mudas enxertadas até { $by }. Exija mudas certificadas. Encomendou? Responda FEITO.{ $how } -{ $adviser }
nudge-dig_pits = { $name }, abra as covas de { $block } até { $by }: { $trees } covas, { $pit }. Marque as covas, longe de criancas. Responda COVAS e numero.{ $how } -{ $adviser }
nudge-plant = { $name }, plante { $block } até { $by } com solo umido: { $trees } mudas. Tire o saco, firme a terra. Responda PLANTEI e numero.{ $how } -{ $adviser }
nudge-survival_check = { $name }, ande cada linha de { $block } até { $by }. De { $trees } arvores, quantas morreram? Responda MORTAS e numero, 0 também. -{ $adviser }
nudge-backfill = { $name }, { $block } tem { $trees ->
    [one] { $trees } falha
   *[other] { $trees } falhas
  }. Replante até { $by } com solo umido, mesmo clone. Responda REPLANTEI e numero. -{ $adviser }
nudge-weed = { $name }, capine as linhas de { $block } até { $by }. Com a mao perto do tronco, lamina longe da casca e do corpo. Responda CAPINEI. -{ $adviser }
nudge-feed = { $name }, adube { $block } até { $by }: { $dose }. Capine antes, solo umido, longe do tronco. Use luvas. Responda ADUBEI. -{ $adviser }
nudge-prune = { $name }, tire os brotos abaixo de { $height } m em { $block } até { $by }, ainda finos. Do chao, sem subir. Responda DESBROTEI. -{ $adviser }
nudge-induce_branching = { $name }, { $trees } arvores altas de { $block } sem galhos. So do jeito que foi ensinado, até { $by }. Sem subir. Responda INDUZI COPA e numero. -{ $adviser }
nudge-look_at_induced = { $name }, até { $by } olhe as arvores induzidas de { $block }. Brotou? Tire a amarra, senao a ponta morre. Responda RAMIFICARAM e numero. -{ $adviser }
nudge-root_check = { $name }, olhe o pé das arvores de { $block } até { $by }: fios brancos? Responda RAIZ BRANCA e numero, 0 também. Nao arranque. -{ $adviser }
nudge-girth_census = { $name }, tire medida de { $trees } arvores de { $block } a { $datum } até { $by }: { $walk }, finas também. Responda CIRC e numeros.{ $how } -{ $adviser }
nudge-clear = { $name }, as mudas de { $block } estao garantidas? Entao derrube e limpe até { $by }: pessoa treinada, outros a 2 alturas de arvore, sem fogo. Responda FEITO. -{ $adviser }
nudge-line = { $name }, marque as linhas de { $block } até { $by }, em nivel, cortando a ladeira: cerca de { $trees } estacas. Responda FEITO. -{ $adviser }
nudge-mulch = { $name }, a seca vem. Cubra o pé das arvores de { $block } até { $by }, a { $gap } cm do tronco, e sombreie as fracas. Responda FEITO. -{ $adviser }
nudge-firebreak = { $name }, abra um aceiro de { $width } m em volta de { $block } até { $by }. Corte o mato, nao queime, lamina longe do corpo. Responda FEITO. -{ $adviser }
nudge-count_tall = { $name }, conte em { $block } até { $by } as arvores acima de { $height } m sem galhos. Responda SEM GALHOS e numero, 0 também. -{ $adviser }
nudge-get_ready = { $name }, { $block } talvez entre em sangria em um ano. Fale com { $adviser } da escola de sangria até { $by }. Nao compre nada, nao sangre ainda. Responda FEITO.
nudge-open = { $name }, { $block } cumpre a regra: { $share }% das arvores com { $girth } cm. { $adviser } olha antes de abrir, até { $by }. Abra so arvores marcadas.
nudge-open-usual = { $name }, { $block }: { $share }% das arvores com { $girth } cm. { $adviser } olha antes de abrir, até { $by }. Abra so arvores marcadas.
nudge-fill_pits = { $name }, encha as covas de { $block } até { $by }: terra de cima primeiro, estaca no meio. Longe de criancas. Responda FEITO.{ $how } -{ $adviser }
nudge-sow_cover = { $name }, semeie a cobertura entre as linhas de { $block } até { $by }, solo umido, longe das mudas. Responda FEITO. -{ $adviser }
nudge-leaf_check = { $name }, olhe as folhas de { $block } até { $by }. Responda MANCHAS ou QUEDA DE FOLHAS e numero, FEITO se sadias. Nao pulverize. -{ $adviser }
field-round = { $name }, ronda { $block } até { $by }: { $jobs }. Lamina longe de si, sem subir, arrancar, pulverizar. Diga FEITO ou o que viu. -{ $adviser }
round-done = Certo, { $name }. Ronda em { $block } anotada como feita { $day }, nada doente. Errado? Responda NAO
walk-then = { ", " }
walk-weeds = mato
walk-shoots = brotos
walk-roots = raizes
walk-leaves = folhas
walk-crops = roca
nudge-near = { $name }, { $ailment } por perto. Olhe { $block } até { $by }. Responda { $ailment } e numero, 0 se nao tem. Nao arranque nem pulverize. -{ $adviser }
nudge-intercrop = { $name }, tem outra cultura em { $block }? A { $distance } m das seringueiras. Até { $by } responda CONSORCIO e o nome, FEITO se nada. -{ $adviser }
nudge-intercrop-steep = { $name }, { $block } é ingreme: melhor nenhuma outra cultura, uma cobertura segura o solo. Até { $by } diga CONSORCIO e o nome, FEITO se nada. -{ $adviser }
nudge-open_rest = { $name }, { $trees } arvores de { $block } estao finas. Tire a medida a { $datum } até { $by }. { $adviser } olha antes de abrir. Responda CIRC e numeros.
nudge-rain_watch = { $name }, a chuva molhou bem o solo de { $block } desde { $since }? Responda CHUVA SIM ou CHUVA NAO. Assim sabemos quando plantar. -{ $adviser }
nudge-hand_over = Parabéns, { $name }. { $block } agora esta em sangria e estes lembretes acabam. Os dados ficam. Ajuda? Responda LIGUE PARA MIM. -{ $adviser }

## The adviser asks

waiting-list = Esperam { $count }, ha { $hours }h: { $people }. Para ler: PROXIMO
waiting-none = Nenhuma mensagem espera por voce.
waiting-person = { $concern } { $count } ({ $name } { $hours }h)
waiting-next = { $name } ({ $group }) { $digits }, { $hours }h, { $concern }. Resolvido? FEITO: { $text }
waiting-next-store = { $name } ({ $group }) { $digits }, { $hours }h. Anotar { $block }: { $facts }? Responda 1. Resolvido? FEITO: { $text }
waiting-next-choose = { $name } ({ $group }) { $digits }, { $hours }h. Anotar { $readings }? Responda o numero. Resolvido? FEITO: { $text }
waiting-reading = { $number } { $block } { $facts }
waiting-next-number = { $name } ({ $group }) { $digits }, { $hours }h. Perdido? PERDIDO { $name }. Novo? MUDOU { $name } e numero. FEITO: { $text }
waiting-closed = Resolvido: { $name }. Ainda esperam: { $count }.
waiting-old = { $count ->
    [one] 1 mensagem espera
   *[other] { $count } mensagens esperam
  } mais de { $hours }h, uma de { $name } ({ $group }). Para ler: PROXIMO
held = Sem lembretes a { $name } até voce escrever RETOMAR { $name }
held-until = Sem lembretes a { $name } até { $day }. Para acabar antes: RETOMAR { $name }
gone-on = { $name } recebe lembretes de novo.
not-held = { $name } ja recebe lembretes.

## A text or a group goes to a colleague
pass-whom = Para quem? Podem assumir: { $people }
pass-nobody = Ninguem mais na lista pode assumir.
pass-none = Nenhuma mensagem foi lida agora. Para ler: PROXIMO
passed = Passada a { $adviser }: a mensagem de { $name }. Ainda esperam: { $count }
passed-notice = { $adviser } passa a voce uma mensagem de { $name } ({ $group }). Para ler: PROXIMO
hand-ask = { $name } cuida de { $groups } daqui em diante: produtores { $farmers }, mensagens { $waiting }, promessas { $owed }, doentes { $sick }? Responda SIM { $code }
handed = { $name } cuida agora de { $groups } e ja sabe: produtores { $farmers }, mensagens { $waiting }, promessas { $owed }, doentes { $sick }.
handed-notice = { $adviser } entrega { $groups } a voce: produtores { $farmers }, mensagens { $waiting }, promessas { $owed }, doentes { $sick }. FILA, SEMANA, DOENCA

## What an adviser owes to whom
promised = Anotado, n. { $number }, ate { $day }: { $text }. Feito? Escreva CUMPRIDO { $number }
promise-kept = Feito: { $text }. Ainda prometido: { $count }
promise-none = Nada assim foi prometido. Para ver o que foi: SEMANA
promise-full = Ha { $count } promessas abertas. Feche algumas antes: SEMANA
owed = { $number } { $text } ({ $day })
owed-call = ligar { $name } ({ $day })

## An adviser's own words to a group or a person
announce-ask = { $phones ->
    [one] { $phones } telefone
   *[other] { $phones } telefones
  }, 1 mensagem cada{ $cost }, { $when }{ $left }. Enviar? Responda SIM { $code }. Texto: { $text }
announce-cost = , custo { $cost }
announce-now = agora
announce-later = { $day } desde { $time }
announce-left = ; { $count } nao (repouso, PARAR)
announced = A caminho de { $phones ->
    [one] { $phones } telefone
   *[other] { $phones } telefones
  }, { $when }{ $left }.
announcement = { $text } -{ $adviser }
announce-nobody = Ninguem de { $name } pode receber nada agora: repouso, PARAR ou sem telefone. Nada foi enviado.
announce-long = Passa { $count } letras de uma mensagem. Nada foi enviado.
announce-empty = O que devo dizer? Escreva DIGA { $name } e depois o recado.

## A phone is lost or found, a number is another one
phone-lost-ask = Telefone de { $people }, fim { $digits }, perdido? Nao recebe mais nada e nao muda nada. Responda SIM { $code }
phone-lost = Parado: telefone de { $people }, fim { $digits }. Achou: ACHADO { $name }. Numero novo: MUDOU { $name } e o numero.
phone-lost-adviser = Parado: telefone de { $people }, fim { $digits }. O numero novo vem com a lista do escritorio.
phone-found-ask = Telefone de { $people }, fim { $digits }, voltou ao dono? Responda SIM { $code }
phone-found = O telefone de { $people }, fim { $digits }, vale de novo.
phone-none = { $name } nao tem outro telefone na lista.
phone-is-lost = Este telefone consta como perdido: nada se diz e nada muda. Sua mensagem fica guardada. Nao perdeu? Fale com seu técnico.
number-ask = { $name } tem agora o numero { $number }? O antigo ({ $digits }) perde todos os direitos. Responda SIM { $code }
number-moved = { $name } tem agora o numero de fim { $digits }. O que vem de numero antigo nao vale mais.
number-own = Seu numero muda pela lista do escritorio, nao por mensagem. Telefone perdido: PERDIDO e seu nome, de outro telefone.
number-unread = Nao é celular deste pais. Nada foi feito. Escreva MUDOU { $name } e o numero inteiro.
number-taken = O numero de fim { $digits } é de outra pessoa. Nada foi feito. É dividido? O escritorio poe na lista.
number-code = { $code }: codigo de { $name } para este numero na linha da seringueira. Envie do telefone antigo. Nao é para voce? Nao responda.
number-code-sent = Um codigo foi ao numero de fim { $digits }. Envie-o deste telefone: aquele numero fica seu e este nao vale mais.

## Land and people pass from one to another
owner-ask = { $block } de { $old } ({ $trees } arvores) é de { $name } de agora em diante, com tudo o que se sabe? Responda SIM { $code }
owner-changed = { $block } é de { $name } agora, { $trees } arvores. { $old } nao recebe mais nada sobre ele.
owner-told-new = { $name }, { $block } de { $old } esta na lista como seu, { $trees } arvores. Errado? Envie LIGUE PARA MIM. -{ $adviser }
owner-told-old = { $name }, { $block } esta na lista de outra pessoa: sem mais mensagens. Errado? Envie LIGUE PARA MIM. -{ $adviser }
owner-which = Que talhao vai para quem? Envie NOVO DONO, o antigo, o talhao, o novo. Os dois na sua lista.
part-ask = { $trees } das { $alive } arvores de { $block } de { $old } viram um talhao de { $name }? Responda SIM { $code }
part-made = { $name } tem { $block } agora, { $trees } arvores; { $alive } ficam com { $old }. A area seguiu as arvores: confira.
part-told = { $name }, { $trees } arvores de { $block } estao na lista de outra pessoa. Errado? Envie LIGUE PARA MIM. -{ $adviser }
part-which = Quantas arvores vao para quem? Envie DIVIDIR, o dono, o talhao, o novo dono e quantas arvores vivas, nao todas.
join-ask = { $name } com { $number } entra em { $group }? Sem lembretes antes de INICIAR desse numero. Responda SIM { $code }
join-ask-known = { $name } entra em { $group } com seus talhoes e tudo o que se sabe? Responda SIM { $code }
joined = { $name } esta em { $group }. Quem é novo nao recebe lembretes até enviar INICIAR do seu telefone.
join-which = Quem entra em que grupo? Envie NOVO MEMBRO, o grupo, o nome, o numero inteiro.
leave-ask = { $name } sai de { $group }? Sem mais lembretes; os dados ficam. Responda SIM { $code }
left = { $name } nao tem mais grupo nem lembretes. Os dados ficam. Voltou? NOVO MEMBRO, grupo, nome, numero.
left-told = { $name }, voce saiu da lista de { $group }: sem mais lembretes. Errado? Fale com { $adviser }.
leave-which = Quem sai? Envie SAI DO GRUPO e o nome.
helper-ask = { $text } com { $number } trabalha por { $name } e recebe as mensagens, depois de um sim de la? Responda SIM { $code }
helper-asked = Perguntei a { $text } no numero de fim { $digits }. As mensagens de { $name } vao para la depois de um sim.
helper-invite = { $text }: { $adviser } pode mandar aqui mensagens sobre a terra de { $name }? Responda SIM ou NAO. Nunca pedimos dinheiro nem senha.
helper-agreed = Obrigado, { $text }. As mensagens de { $name } chegam aqui agora e o que voce informar conta. Para sair: PARAR
helper-ended = Pronto, { $text }. Sem mais mensagens de { $name } neste telefone.
helper-notice = { $text } aceitou: as mensagens de { $name } vao para o numero de fim { $digits }.
helper-which = Quem trabalha por quem? Envie SEGUNDO TELEFONE, o nome na lista, o outro nome, o numero inteiro.

status = { $group } { $day }: { $farmers ->
    [one] { $farmers } produtor
   *[other] { $farmers } produtores
  }, { $planted } plantaram, vivas { $alive }. { $due }{ $late }{ $check }Silencio { $quiet }, doentes { $sick }{ $peace }
status-due = A fazer: { $tasks }. { "" }
status-due-none = Nada a fazer. { "" }
status-late = Atraso: { $tasks }. { "" }
status-late-none = Sem atraso. { "" }
status-check = A ver para abrir { $count }. { "" }
left-in-peace = . Deixados em paz { $count }
feed-lost = . Adubos perdidos em { $days } dias: { $count }, ver { $name }
alive-pct = { $pct }%
alive-pct-visited = { $pct }% ({ $visited }% vistas)
alive-unknown = ?
task-count = { $task } { $count }
more = +{ $count }
more-jobs = mais { $count }
more-none = Era tudo.
status-all = { $groups }
status-line = { $group } vivas { $alive } atraso { $late } calados { $quiet } doentes { $sick }
late-all = Atraso: { $groups }
gaps-all = Falhas: { $groups }
sick-all = Doentes: { $groups }
group-count = { $group } { $count }
group-first = { $group } { $count } ({ $first })
gaps-order = { $order ->
    [0] tarde para replantar
   *[other] pedir { $order }
  }
late-list = Atraso { $group }: { $people }{ $peace }{ $lost }
late-none = Nenhum atraso em { $group }{ $peace }{ $lost }.
late-person = { $name } { $task } { $days }d
late-person-told = { $name } { $task } { $days }d avisado 3x
quiet-list = Silencio mais de { $limit }d: { $people }{ $why }
quiet-none = Ninguém em silencio por mais de { $limit } dias{ $why }.
quiet-person = { $name } { $days }d
quiet-person-never = { $name } nunca
gaps-list = Falhas { $group }: { $gaps } em { $farmers ->
    [one] { $farmers } produtor
   *[other] { $farmers } produtores
  }, { $order ->
    [0] tarde para repor
   *[other] pedir { $order } com perdas
  }. { $people }
gaps-none = Nenhuma falha conhecida em { $group }. { $uncounted } talhoes ainda sem contagem.
gaps-person = { $name } { $gaps }
sick-list = Doentes { $group }: { $people }
sick-list-cluster = Doentes { $group }: { $ailment } em { $count } lugares desde { $day }, ver logo. { $people }
sick-none = Nenhuma doenca informada em { $group } em { $limit } dias.
sick-person = { $name } { $ailment } { $count }
visit-list = Visitar: { $people }{ $peace }
visit-none = Ninguém precisa de visita agora{ $peace }.
visit-cluster = { $name } { $ailment } em { $count } lugares
visit-lost = { $name } { $pct }% das arvores mortas
visit-quiet = { $name } silencio { $days }d
visit-ending = { $name } { $task } faltam { $days }d
feed-group = Adubo { $group }: { $farmers ->
    [one] { $farmers } produtor
   *[other] { $farmers } produtores
  }, { $trees } arvores, { $kilograms } kg. Sacos de 50 kg: juntos { $pooled }, cada um so { $alone }. { $people }
girth-list = Medidas { $group }: { $people }
girth-none = Ainda sem medidas em { $group }.
feed-none = Nenhuma adubacao a fazer agora em { $group }.
member = { $name } ({ $group }): { $blocks }. Ultima mensagem { $day }
member-told = { $name } ({ $group }): { $blocks }. Ultima noticia { $day }, ainda sem mensagem
member-never = { $name } ({ $group }): { $blocks }. Ainda sem mensagem
member-block = { $block } { $living } vivas, plantio { $day }{ $due }
member-block-empty = { $block } { $area }, sem plantio{ $due }
member-due = , { $task } { $day }
member-girth = , circ { $mean } cm ({ $of }), { $against }{ $ready }
member-behind = atraso { $months } meses
member-ahead = avanco { $months } meses
member-ready = , sangria { $earliest } a { $latest }
member-no-blocks = nenhum talhao
member-which = Qual? { $people }
window-ask = Abrir o plantio em { $group } a partir de { $day }? { $rain }{ $farmers ->
    [one] { $farmers } produtor sera avisado
   *[other] { $farmers } produtores serao avisados
  }. Responda SIM { $code }
window-opened = Plantio aberto em { $group } a partir de { $day }. { $farmers ->
    [one] { $farmers } produtor sera avisado
   *[other] { $farmers } produtores serao avisados
  }.
rain-open = Chuva 10 d: solo molhado em { $soaked } de { $reporters }, bom para plantar. { "" }
rain-hold = Chuva 10 d: solo molhado em { $soaked } de { $reporters }, espere. { "" }
rain-few = Chuva 10 d: so { $reporters } responderam. { "" }
rain-begun-notice = { $group }: chuva molhou o solo em { $soaked } de { $reporters } desde { $day }. Ainda pode vir seca. Para abrir o plantio: JANELA { $group }
rain-stopped-notice = { $group }: sem chuva boa desde { $day }, talvez falso inicio. Nao abra ainda; mudas precisam de sombra e agua.
rain-stopped-notice-open = { $group }: sem chuva boa desde { $day }, talvez falso inicio. Para parar o plantio: SUSPENDER PLANTIO { $group }
hold-none = O plantio em { $group } nao esta aberto: nada a suspender.
hold-ask = Suspender o plantio em { $group }? Os lembretes de plantar param ({ $farmers } produtores) até reabrir. Responda SIM { $code }
planting-held = Plantio suspenso em { $group } desde { $day }. Para reabrir: JANELA { $group }
not-your-group = Qual grupo ou produtor? Os seus: { $groups }

## For the operator: how the service is

operator-well = Tudo bem. { $state }
operator-trouble = Por favor veja o servico de mensagens: { $troubles }. { $state }
operator-state = Ultima mensagem recebida ha { $hours }h. Por enviar: { $waiting }. Partes neste mes: { $parts }{ $share }.
operator-state-silent = Nenhuma mensagem recebida ainda. Por enviar: { $waiting }. Partes neste mes: { $parts }{ $share }.
operator-share = , { $pct }% do orcamento
operator-refused = { $gateway } nao aceita mensagens
operator-down = { $gateway } sem ligacao
operator-says = veja o cartao SIM de { $gateway }
operator-silent = nada vem por { $gateway } ha { $hours }h
operator-machine = O telefone que termina em { $digits } escreve como uma maquina e tem menos respostas. Pergunte de quem e.
operator-oldest = uma mensagem espera o envio ha { $hours }h
operator-disk = o disco esta quase cheio
operator-spent = o orcamento do mes acabou
operator-budget = { $pct }% do orcamento do mes acabou, { $parts } partes. { $stops }
operator-stops-none = Nada para por enquanto.
operator-stops-some = Estranhos ja sem resposta. Lembretes param em 90 e 95%, respostas em 100%.
operator-stops-all = Ate ao fim so saem codigos, PARAR, primeiros socorros e avisos.

## The adviser asks more. A fact is known by a visit, a list, a leader, or an own text: a letter each.

source-visit = V
source-sheet = L
source-leader = R
source-text = T
untold = sem causa
quiet-failing = { $person } tel. falha
quiet-resting = . Em descanso { $count }
quiet-idle = . Nada a fazer { $count }
dead-all = Mortas: { $groups }
dead-line = { $group } { $dead } de { $planted }
dead-list = Mortas { $group }: { $dead } de { $planted } ({ $pct }%). { $people }{ $uncounted }
dead-person = { $name } { $pct }% { $source }
dead-uncounted = . Sem contagem { $count }
dead-parts = Mortas { $group }: { $dead } de { $planted } ({ $pct }%). { $parts }
dead-part = { $what } { $count }
clone-all = Clones: { $groups }
clone-list = Clones { $group }: { $clones }
clone-none = Nada foi plantado em { $group } ainda.
clone-share = { $clone } { $pct }% (mortas { $dead } de { $planted })
order-all = Pedido: { $groups }
order-list = Pedido { $group }: { $plants } mudas, { $farmers ->
    [one] { $farmers } produtor
   *[other] { $farmers } produtores
  }, { $land }. Firme { $firm }, desejo { $wished }{ $by }. { $parts }
order-none = Ninguem em { $group } tem dia de plantio marcado.
order-part = { $clone } { $plants } { $day }
order-by = , pedir ate { $day }
order-firm = firme { $firm }
feed-all = Sacos: { $groups }
feed-share = { $name } { $kilograms } kg
work-all = { $task }: { $groups }
work-line = { $group } feito { $done } a fazer { $due } atraso { $late }
work-round = { $group } { $task }: feito { $done }, a fazer { $due }, atraso { $late }. { $people }
root-all = Raizes: { $groups }
root-round = Raizes { $group }: vistas { $done }, a ver { $due }, atraso { $late }. { $found }
root-none = Nenhuma raiz branca avisada.
fire-all = Aceiro: { $groups }
fire-round = Aceiro { $group }: feito { $done }, a fazer { $due }, atraso { $late }. Fogo: { $found }
fire-none = nenhum aviso
wind-all = Arvores feridas pelo vento: { $groups }
wind-list = Vento { $group }, { $days }d: { $farmers } de { $of } avisaram, { $trees } arvores. { $people }
wind-none = Nenhum dano de vento avisado em { $group } em { $days } dias.
harm-all = Arvores atingidas: { $groups }
harm-list = { $group }, dano por { $cause } em { $days }d: { $farmers } de { $of } avisaram, { $trees } arvores. { $people }
harm-none = { $group }: nenhum dano por { $cause } avisado em { $days } dias.
harm-ask = Perguntar a { $group } por { $cause }: { $phones } telefones, 1 mensagem cada? Responda SIM { $code }
harm-sent = { $phones } telefones de { $group } serao perguntados por { $cause }. Para ver as respostas: { $cause } { $group }
harm-question = { $name }, { $cause } em { $group }? Quantas arvores atingidas? Olhe so onde for seguro. Responda { $cause } e o numero, 0 se nenhuma. -{ $adviser }
harm-asked = { $group }, { $cause }, perguntado { $day }: { $answered } de { $of } responderam, { $hurt } perderam { $trees } arvores. { $people }
harm-asked-none = { $group }, { $cause }, perguntado { $day }: todos os { $of } responderam, nenhuma arvore atingida.
harm-silent = { $name } sem resposta
leaders-ask = Perguntar a { $leaders } lideres por { $people }? Responda SIM { $code }
leaders-none = Ninguem em silencio por quem um lider possa ser perguntado.
leaders-asked = Lideres perguntados: { $leaders }
leader-asked = { $name }, nada se soube de { $people } em { $limit } dias. Estao bem? Escreva o que fizeram, ou LIGUE PARA MIM. -{ $adviser }
girth-all = Talhoes medidos: { $groups }
girth-one = { $name } { $block } { $day } { $source }: { $trees } arvores, media { $mean } cm, variacao { $spread }%, menor { $smallest }. { $against }
girth-share = { $name } { $block } { $day } { $source }: { $count } de { $of } arvores com grossura
girth-unknown = Ainda sem medidas de { $name }.
ready-one = { $name } { $block }: sangria por { $likely }, de { $earliest } a { $latest }, por { $trees } arvores
ready-close = { $name } { $block }: perto, medir e ver antes de abrir{ $more }
ready-trees = . A sangrar { $trees }{ $hectare }: { $pct }% das vivas{ $places }{ $spread }{ $runts }
ready-hectare = , { $trees } por hectare
ready-places = , { $pct }% dos lugares
ready-spread = ; variacao { $spread }%
ready-runts = , raquiticas { $pct }%: mato, sombra, raizes?
ready-early = { $name } { $block }: cedo demais com { $trees } arvores
ready-unknown = { $name } { $block }: sem medidas
ready-opened = { $name } { $block }: em sangria
ready-group = Sangria { $group }: { $years }. Ver agora { $now }, cedo demais { $early }, sem medidas { $unknown }
ready-year = { $year } { $stands } ({ $land })
ready-no-year = ainda sem ano
ready-now = Ver antes de abrir: { $people }
ready-now-none = Nenhum talhao esta perto de abrir.
ready-person = { $name } { $block } { $pct }% de { $of } arvores ({ $low }-{ $high }%)
map-all = Talhoes: { $groups }
map-list = Mapa { $group }: { $blocks } talhoes. Sem ponto { $point }, sem area { $area }, acima de { $limit } e sem contorno { $large }. Compradores: sim { $shared }, nao { $kept }
map-point = sem ponto { $count }
rain-all = Chuva 10 d: { $groups }
rain-line-open = { $group } { $soaked } de { $reporters } molhados: bom para plantar
rain-line-hold = { $group } { $soaked } de { $reporters } molhados: espere
rain-line-few = { $group } so { $reporters } avisaram
best = Vivas: { $alive }. Mais falhas: { $gaps }. Mais silencio: { $quiet }
cost = Mensagens do mes, todo o servico: { $parts } partes{ $money }{ $share }. Telefones que falham: { $failing }
cost-money = , custo { $cost }
week = Sua semana: visitas feitas { $made }, a visitar { $left }, mensagens na fila { $waiting }{ $deadline }
week-owed = Sua semana: visitas feitas { $made }, a visitar { $left }, mensagens na fila { $waiting }{ $deadline }. Prometido: { $promises }
week-order = . Pedir mudas ate { $day }
last-list = { $name }: { $facts }
last-fact = { $day } { $source }{ $block } { $what }
last-none = Nada foi dito de { $name } ainda.
labour = { $name }, proximos { $days } dias: { $jobs }. Quanto tempo leva nao esta anotado.
labour-job = { $task } { $block } { $day }
labour-job-days = { $task } { $block } { $day } { $effort }d
labour-days = { $name }, proximos { $days } dias: { $jobs }. Uma pessoa precisa de { $effort } dias{ $busy }
labour-busy = . Ocupado de { $from } a { $to }
labour-none = { $name } nao tem trabalho nos proximos { $days } dias.
whose = Final { $digits }: { $people }. { $last }
whose-person = { $name } ({ $group }), aceitou { $consent }{ $other }
whose-other = , tambem { $digits }
whose-last = Ultima mensagem { $day }
whose-never = Ainda sem mensagem
whose-none = Nenhum dos seus produtores tem numero com final { $digits }.
paid-none = { $group }: { $held } pago. Nada a adubar ou sem preco. Envie DIA DE COMPRA { $group }, preco do saco, dia.
paid-all = Dinheiro do adubo: { $groups }
paid-line = { $group } { $held } de { $total }
paid-list = Dinheiro do adubo { $group }: { $paid } de { $of } pagaram, { $held } de { $total }. Falta: { $people }{ $buying }
paid-whole = Dinheiro do adubo { $group }: os { $of } pagaram, { $held } de { $total }{ $buying }
paid-person = { $name } { $cents }
paid-entered = Anotado, pago no total: { $people }. Errado? Envie de novo o valor certo.
paid-told = { $name }, { $leader } anotou { $cents } pagos por voce pelo adubo. Errado? Envie LIGUE PARA MIM. -{ $adviser }
paid-which = Quem pagou quanto no total? Envie PAGO, o nome, o valor.
buying-on = { ". " }Compra { $day }
buying-set = { $group } compra adubo { $day }: { $bags } sacos x { $price } = { $total }. Cada um: { $people }{ $left }
buying-left = { ". " }Sobram { $kilograms } kg
buying-none = { $group } compra adubo { $day }, { $price } o saco. Nada a adubar agora.
buying-which = Envie DIA DE COMPRA, o grupo, o preco do saco e um dia que vem.
grant-none = Nao ha pagamentos por etapa no calendario dos seus grupos: pergunte ao escritorio.
grant-list = Parte { $part } { $group }, { $stand }/ha aos { $months } meses: passam { $pass }, faltam { $short }, sem visita { $days }d { $unseen }, novas { $young }. { $people }
grant-whole = Parte { $part } { $group }, { $stand }/ha aos { $months } meses: passam { $pass }, novas { $young }. Nada em aberto.
grant-short = { $name } faltam { $trees }
grant-unseen = { $name } sem visita
grant-no-size = { $name } sem area
grant-all = Pagamentos: { $groups }
grant-line = { $group } parte { $part } passam { $pass } faltam { $short } sem visita { $unseen }
train-none = { $group }: nenhum treino anotado. Envie TREINADOS, o trabalho e quem veio.
train-none-of = { $group }: nenhum treino anotado para { $work }.
train-waits = { $group } { $work }: na hora, mas nunca mostrado a { $people }. Sem lembrete para eles. { $came } de { $of } viram.
train-all = Treinos: { $groups }
train-list = { $work } { $group } { $day }: { $came } de { $of } vieram. Faltaram: { $people }
train-whole = { $work } { $group } { $day }: os { $of } viram.
train-topics = Mostrado { $group }: { $topics }
train-topic = { $work } { $day } { $came } de { $of }
train-entered = Anotado, { $work } { $day }, { $count } vieram: { $people }
train-which = Que trabalho foi mostrado? Envie TREINADOS, o trabalho e os nomes.
list-all = Faltam: { $groups }
list-group = { $group }, { $days } dias: { $told } de { $of } informados. Faltam: { $people }
list-none = { $group }: nao falta ninguem. Ha trabalho para { $of }, noticias em { $days } dias.
list-person = { $name } { $task }
allot-all = Mudas: { $groups }
allot-list = Mudas { $group }: { $people }
allot-none = { $group }: sem mudas em estoque e sem pedidos firmes.
allot-clone = { $clone } { $plants } em estoque{ $ready }, { $ordered } pedidas
allot-line = { $group } { $people }
allot-ready = { " " }desde { $day }
allot-share = { $name } { $clone } { $plants }
stock-which = Quantas mudas, que clone, prontas quando? Envie ESTOQUE, o clone, o numero, o dia.

lesson-step = { $step }/{ $of } { $text } Depois: MAIS
lesson-end = { $step }/{ $of } { $text }
lesson-plants-1 = Leve mudas enxertadas do clone que o tecnico indicar, com etiqueta do viveiro. Muda de semente rende menos.
lesson-plants-2 = Procure dois andares de folhas, duros e verde-escuros. Folha mole murcha no caminho.
lesson-plants-3 = O broto sai do enxerto, o corte fechou, a haste reta. Broto de baixo é do cavalo.
lesson-plants-4 = Terra da sacola inteira e umida, poucas raizes saem. Deixe no viveiro as quebradas e secas.
lesson-plants-5 = Conte junto com o motorista. Carregue pela sacola, nunca pela haste. Sombra e agua até plantar.
lesson-stumps-1 = Toco de raiz nua seca logo: plante assim que puder. Até la, na sombra e em sacos molhados.
lesson-stumps-2 = Os bons tem uma raiz reta e o enxerto verde. Muitos recusam raiz bifurcada ou torta.
lesson-stumps-3 = Encurte as raizes do lado para 7,5-10 cm. Corte para longe do corpo, os outros guardam distancia.
lesson-stumps-4 = Na cova cheia abra um furo com um pau, fundo como a raiz. A ponta nao pode dobrar.
lesson-stumps-5 = O enxerto fica 2-3 cm acima do chao. Aperte a terra de baixo para cima e regue.
lesson-pits-1 = Cave nas estacas, cerca de um mes antes de plantar. Terra de cima de um lado, a de baixo do outro.
lesson-pits-2 = Cova aberta é armadilha: marque, e sem meninos nem animais perto até encher.
lesson-pits-3 = Encha cerca de 10 dias antes de plantar: primeiro a terra de cima.
lesson-pits-4 = Composto curtido vai nos 30 cm de cima, se houver. Adubo so como o tecnico disser, com luvas.
lesson-pits-5 = Deixe um montinho, a terra baixa. Ponha a estaca no meio: ali vai a muda.
lesson-planting-1 = Regue as sacolas na véspera. Nao plante com as folhas de cima moles.
lesson-planting-2 = Abra a cova na fundura da sacola. Corte o fundo da sacola com as raizes. Lamina para longe do corpo.
lesson-planting-3 = Ponha reto, o enxerto pouco acima do chao, de costas para o sol da manha e da tarde.
lesson-planting-4 = Puxe a sacola para cima; a terra nao pode quebrar. Encha e aperte dos lados, nao em cima.
lesson-planting-5 = Regue. Cubra em volta sem tocar a haste. Leve as sacolas para casa. Toco de raiz nua se planta de outro jeito.
lesson-shoots-1 = Broto abaixo do enxerto é do cavalo, nao do seu clone: tire a cada volta.
lesson-shoots-2 = Acima, tire os brotos do lado até a altura dos galhos. O tecnico diz qual.
lesson-shoots-3 = Tire moles e curtos: o polegar basta, e a ferida fica pequena.
lesson-shoots-4 = Um grosso: corte limpo junto da haste, sem rasgar. Lamina longe do corpo, os outros longe.
lesson-shoots-5 = Deixe a ponta e suas folhas. Nas chuvas, nao na seca. Nao suba na arvore.
lesson-branching-1 = Para arvores sem galhos a 2,5-3 m acima do enxerto. Ha clones que abrem sozinhos depois: pergunte antes.
lesson-branching-2 = Quando: 1,5 a 2 anos, nas chuvas, folhas de cima duras. Muitos evitam a seca, o vento e arvores tortas.
lesson-branching-3 = Dobre as folhas do ultimo andar maduro sobre a ponta e amarre, ou corte a 3-4 foliolos. So como mostraram.
lesson-branching-4 = Fique no chao: nao suba, nao dobre a haste. O que é alto demais espera o tecnico.
lesson-branching-5 = Olhe depois de 2 a 3 semanas. Com brotos, tire a amarra, senao a ponta morre. Depois RAMIFICARAM e o numero.
lesson-girth-1 = Use fita, ou barbante e régua. Com uma marca na grossura que vale, um olhar basta.
lesson-girth-2 = Mede-se cada uma na mesma altura, a do meu SMS. Uma vara desse tamanho ajuda.
lesson-girth-3 = Em volta do tronco, plano e justo, nao sobre ferida ou no. Nao estique o barbante.
lesson-girth-4 = Escolha contando, as finas também. Quem escolhe a olho pega as melhores e se engana.
lesson-girth-5 = Anote cada uma e envie todas, como CIRC 41 43 39. Eu digo se bastam.
nudge-how = { " " }Como? Envie COMO.

stopped-shared = Pronto. Sem mais lembretes para este numero, para { $people }. Os dados ficam. INICIAR para voltar, APAGAR MEUS DADOS para tirar o nome.
complaint-told = Sentimos muito, { $name }. Anotado com no. { $number }: { $adviser } ja sabe e responde até { $day }.
stand-short = Faltam chegar { $short } de { $ordered }. { $handle } { "" }
stand-arrived = { $handle } { "" }
handle-bag = Sombra, agua, carregue pela sacola.
handle-stump = Sacos molhados, sombra, plante logo.
handle-any = Sombra e agua.
pick-up-set = { $group }, retirada { $day }, avisados { $count }: { $people }
pick-up-told = { $name }, { $plants } mudas para voce { $day }. Leve carroca e sombra. Conte e escreva: recebi mudas e o numero. -{ $adviser }
pick-up-none = { $group }: nada a retirar. Antes faltam mudas no estoque e pedidos firmes: ESTOQUE.
pick-up-which = Em que dia que vem? Envie DIA DE RETIRADA, o grupo e o dia.
order-pick-up = { $name }, as mudas se retiram { $day }, { $plants } para voce. Nao vieram? Avise. -{ $adviser }
