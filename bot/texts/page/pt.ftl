# Texts of the office's pages. They may be of any length and have any letters; no SMS says them. From memory; needs a native reader.

# Door
page-come-in = Entrar
page-your-name = Seu nome inteiro, como está na lista
page-send-code = Enviar um código ao meu telefone
page-door-help = Sem telefone, ou a linha caiu? No próprio computador o escritório pode pedir um código: budwood office code
page-code-sent = Se este nome pode olhar aqui, um código vai para o seu telefone. Vale dez minutos.
page-code = Código
page-code-wrong = Esse código não está certo, ou é velho demais.
page-other-name = Outro nome, ou um novo código
page-begin = Para a primeira página
page-other-host = Este endereço não é nosso. Use o que o seu escritório lhe deu.
page-other-origin = Este formulário não vem de uma página nossa. Nada foi feito.
page-old-form = Este formulário é velho demais. Nada foi feito.
page-too-many = Há gente demais à porta. Tente daqui a um minuto.
page-busy = A página não pode ser mostrada agora. Tente daqui a um minuto.
page-not-yours = Esta página não é para si.
page-not-there = Essa página não existe.

# Every page
page-skip = Para o conteúdo
page-menu = Páginas
page-go-out = Sair
page-today = Hoje
page-queue = Mensagens que esperam
page-groups = Grupos
page-sick = Árvores doentes
page-season = Época e chuva
page-stock = Mudas e adubo
page-line = A linha
page-about = Quem
page-what = O quê
page-is = É
page-who = Quem
page-group = Grupo
page-why = Porquê
page-day = Dia
page-block = Talhão
page-number = Número
page-count = Quantos
page-yes = sim
page-no = não
page-nothing = nada
page-never = nunca
page-unknown = não se sabe
page-pct = { $pct } %
page-sum = Soma
page-late = atrasado
page-new = novo
page-old = velho
page-very-old = muito velho
page-look-here = ver aqui
page-minutes-ago = há { $count } min
page-hours-ago = há { $count } h
page-days-ago = há { $count } dias

# Today
page-waiting = Mensagens que esperam por alguém
page-none-waits = Nenhuma mensagem espera por si.
page-hours = Horas
page-gathers = Doença que se junta
page-none-gathers = Nenhuma doença se junta.
page-sickness = Doença
page-reports = Relatos
page-since = Desde
page-promises = Prometido
page-none-promised = Nada está prometido.
page-to-whom = A quem
page-by = Até
page-words = Nas suas palavras
page-visits = Quem visitar primeiro
page-none-to-visit = Ninguém para visitar agora.

# The line
page-line-well = A linha está bem.
page-line-held = As mensagens estão retidas até alguém as soltar: budwood release
page-clock = O relógio do computador é duvidoso: os lembretes esperam.
page-leaving = Mensagens que esperam sair: { $count }
page-gateways = Portas de saída
page-gateway = Porta
page-last-in = Última que entrou
page-last-out = Última que saiu
page-oldest = Espera há mais tempo
page-refused = Recusas seguidas
page-month = Este mês
page-parts = Partes
page-money = Dinheiro
page-budget-gone = Do orçamento já se foi
page-held = Não dito, desde o início
page-held-answers = Respostas a telefones que escrevem demais
page-held-strangers = Respostas a estranhos
page-held-unpaid = Mensagens além do dinheiro do dia ou do mês
page-held-machines = Respostas a máquinas

# Groups
page-farmers = Agricultores
page-planted-farmers = Plantaram
page-alive-pct = Vivas
page-visited-pct = Contado em visita
page-gaps = Falhas
page-due = A fazer
page-late-jobs = Atrasadas
page-quiet = Calados
page-sick-farmers = Doentes
page-unreached = Não alcançados
page-figures = Em números
page-season-of = A época por semanas
page-sign-done = feito
page-sign-seen = visto em visita
page-sign-asked = pedido por mensagem
page-sign-late = atrasado
page-members = Agricultores do grupo
page-blocks = Talhões
page-living = Árvores vivas
page-due-jobs = Trabalhos a fazer
page-heard = Últimas notícias
page-coming = Mensagens dos próximos 14 dias, se o trabalho não for contado antes
page-none-coming = Nenhuma mensagem prevista para os próximos 14 dias.
page-job = Trabalho
page-due-day = A partir de
page-not-before = Mensagem não antes de
page-why-due = está na hora
page-why-again = já pedido, sem resposta

# A farmer
page-consent = Consentimento
page-consent-given = dado em { $day }
page-consent-withdrawn = retirado em { $day }
page-consent-unknown = não registado: nenhum lembrete sai
page-language = Língua
page-phones = Telefones terminam em
page-hold = Deixado em paz
page-hold-yes = sim, agora
page-land = Terra
page-planted-on = Plantado
page-sick-trees = Árvores doentes
page-job-on = { $task } { $day }
page-ready = Quando as árvores estarão provavelmente prontas para abrir: quatro em cada cinco vezes dentro da barra; o traço é o dia provável
page-range = { $block }: provável { $likely }, entre { $earliest } e { $latest } ({ $trees } árvores medidas em { $day })
page-facts = O que foi contado
page-none-told = Ainda nada foi contado.
page-source = Fonte
page-told-by = Contado por
page-told-on = Contado em
page-fact = Um facto
page-instead-of = Em vez de
page-text = A mensagem
page-asked-for = pedido por mensagem: { $task }
page-put-off = adiado: { $task }
page-warned = avisado: { $ailment } por perto
page-under-living = { $name } { $block }: em que assentam as árvores vivas
page-under-sick = { $name } { $block }: em que assentam as árvores doentes
page-fact-line = { $day } { $block }: { $what }

# Sick trees
page-none-sick = Nenhuma doença conhecida por acabar.
page-trees = Árvores
page-seen-on-visit = Visto em visita
page-on-map = No mapa
page-map = Mapa dos talhões com árvores doentes; a tabela abaixo diz o mesmo
page-map-signs = Triângulo: raízes. Círculo: folhas. Quadrado: rebentos. Losango: térmitas. Estrela: outro. Cheio: visto em visita. Mais: nada contado. O número é o da tabela.
page-north = N

# Season
page-rains = Chuvas
page-rains-begin = Início das chuvas
page-rains-end = Fim das chuvas
page-window = Plantio
page-open-since = aberto desde { $day }
page-window-shut = não aberto
page-rain-told = O que se conta
page-rain-reports = Chuva das últimas quatro semanas
page-none-rain = Ninguém falou de chuva nas últimas quatro semanas.
page-ground = Solo
page-soaked = encharcado
page-dry = sem chuva
page-millimetres = mm
page-ahead = { $group }: as próximas oito semanas
page-week-from = Semana de
page-jobs-blocks = Trabalhos, e em quantos talhões
page-job-count = { $task } ({ $count })

# Plants and fertiliser
page-plants = { $group }: mudas para os plantios que vêm
page-none-wanted = { $group }: nenhuma muda pedida.
page-clone = Clone
page-planting = Plantio
page-plants-all = Mudas
page-firm = Encomendadas
page-wished = Desejadas
page-nursery = { $group }: mudas dos viveiros
page-none-raised = { $group }: nada se conta dos viveiros.
page-supply = Há
page-ready-on = Prontas em
page-ordered = Encomendadas
page-shared = Repartidas
page-feed = { $group }: adubo a dar, { $pooled } sacos juntos ou { $alone } cada um por si
page-none-feed = { $group }: nenhum adubo a dar.
page-kilograms = kg

# A text that waits
page-no-reading = Nada nela pode ser guardado como está.
page-next = Seguinte (N)
page-open-jobs = Trabalhos abertos
page-last-facts = O que foi contado por último
page-store = Guardar
page-ask = Perguntar de novo (A)
page-close = Resolvido (C)
page-pass = Passar (P)
page-pass-to = Passar a
page-fix = Isto está errado
page-fix-do = Corrigir
page-right-number = O número certo; deixe vazio para retirar o facto
page-reason = Porquê
page-counts-no-more = Isto foi corrigido e já não conta.
page-not-done = Não se pode: já está feito, ou não é seu.
