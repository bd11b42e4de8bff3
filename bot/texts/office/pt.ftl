# O que se imprime. From memory; needs a native reader who knows rubber.

sheet-meeting = Folha de reunião, { $group }
sheet-shares = Partes do adubo, { $group }
sheet-pickup = Retirada de mudas, { $group }
sheet-visits = Visitas, { $group }
sheet-holds = Pessoas deixadas em paz, { $group }

sheet-number = Folha { $number }
sheet-printed = impressa em { $day }
sheet-text-back = Devolva as linhas por SMS: FOLHA { $number }: 3 mortas 20, 5 capinei
sheet-of-people = { $people } pessoas, { $blocks } talhões
sheet-bags = { $bags } sacos de { $weight } kg comprados juntos, sobram { $left } kg; cada um só: { $alone } sacos
sheet-price = { $money } no total, { $held } pagos até agora
sheet-plants = { $plants } mudas encomendadas, mais { $wished } desejadas
sheet-slots = Quatro produtores a cada meia hora; guarde as mudas na sombra e o torrão inteiro.
sheet-restricted = Só para o escritório e os técnicos. Não deixe à vista.

column-row = N.º
column-farmer = Produtor
column-block = Talhão
column-planted = Plantadas
column-alive = Vivas
column-gaps = Falhas
column-due = A fazer
column-dead = Mortas
column-filled = Replant.
column-weeded = Capina
column-fed = Adubo
column-signature = Assinatura ou polegar
column-trees = Árvores
column-grams = g por árvore
column-kilograms = kg
column-bags = Sacos só
column-money = A pagar
column-paid = Pago
column-received = Recebido
column-time = Hora
column-clone = Clone
column-ordered = Pedidas
column-got = Recebidas
column-spare = A mais
column-place = Lugar
column-phone = Fim do número
column-reason = Porquê
column-bring = Levar
column-notes = Notas
column-since = Desde
column-until = Até

bring-knife = faca limpa, sacos para amostras
bring-count = folha de reunião, para contar juntos
bring-tape = fita e barbante
bring-ear = tempo para ouvir
hold-grief = uma morte na família
hold-open = até a palavra do técnico
