import type { LessonKey } from './lessons-english.js';

/** What the lessons say, in German. */
export const LESSONS_GERMAN: Readonly<Record<LessonKey, string>> = {
  'colour.lake': 'seeblau',
  'colour.buoy': 'bojenorange',
  'colour.reed': 'schilfgrün',
  'colour.undyed': 'ungefärbt',

  'lesson.page': 'Seite {page} von {pages}',
  'lesson.next': 'Nächste Seite',
  'lesson.before': 'Vorige Seite',
  'lesson.again': 'Von vorn',
  'lesson.none': 'Diese Lektion gibt es nicht.',
  'lesson.question': 'Jetzt du',
  'lesson.choose': 'Wähle eine Antwort. Du kannst alle ausprobieren: Jede zeigt, was daraus wird.',
  'lesson.right': 'Richtig.',
  'lesson.notThis': 'Das ist es nicht.',
  'lesson.becomes': 'Was daraus wird',
  'lesson.watch': 'Sieh beim Knüpfen zu',
  'lesson.drawn': 'Wie gezeichnet',
  'lesson.yours': 'Mit deiner Antwort',
  'lesson.check': 'Das Nachprüfen der Schritte ergibt:',
  'lesson.marked': 'Abweichende Stellen sind gestrichelt eingerahmt.',
  'lesson.situation': 'Vor diesem Knoten',
  'lesson.straight': 'Gerade Ränder',
  'lesson.wrapped': 'Umschlungene Ränder',
  'lesson.two': 'Zwei Randknoten an jeder Wende',
  'lesson.one': 'Ein Randknoten an jeder Wende',
  'lesson.behind': 'Hinten vorbeigeführt, wie es sein soll',
  'lesson.caught': 'Im letzten Knoten gefangen',

  'choice.forward': 'Vorwärts: zwei halbe Schläge vorwärts.',
  'choice.backward': 'Rückwärts: zwei halbe Schläge rückwärts.',
  'choice.forward-backward':
    'Vorwärts-Rückwärts: erst ein halber Schlag vorwärts, dann einer rückwärts.',
  'choice.backward-forward':
    'Rückwärts-Vorwärts: erst ein halber Schlag rückwärts, dann einer vorwärts.',
  'choice.none': 'Hier keinen: gleich weiter zum nächsten Grundfaden.',
  'choice.through':
    'Ich lege ihn unter dem neuen Leitfaden mitten durch den halb geknüpften Knoten.',
  'choice.behind': 'Ich führe ihn hinter und unter diesem Knoten vorbei, ohne ihn zu fangen.',
  'choice.down': 'Ich führe ihn nach unten und hinten, bevor dieser Knoten geknüpft wird.',
  'choice.string': '{string} knüpft.',
  'choice.add': '{lead} von hinten neu ansetzen; das Fadenende bleibt hinten.',
  'choice.takeUp': '{lead} von hinten wieder nach vorn holen, wo er ruht.',
  'choice.faraway': '{lead} am fernen Rand einsetzen und vorn quer herüberführen.',
  'choice.lastHalf': 'Der zweite halbe Schlag, der zuletzt geknüpfte.',
  'choice.firstHalf': 'Der erste halbe Schlag, der zuerst geknüpfte.',
  'choice.pull': 'Keiner von beiden: kräftig am Leitfaden ziehen.',

  'ask.kind':
    'Reihe {row}, Knoten {knot}: {lead} hängt {side} von {held}. Welchen Knoten knüpfst du?',
  'ask.route': 'Reihe {row}, Knoten {knot}: {lead} übernimmt. Was machst du mit {old}?',
  'ask.string': 'Reihe {row}, Knoten {knot} soll {colour} sein. Welcher Faden knüpft ihn?',
  'ask.entry': 'Reihe {row}, Knoten {knot} wird mit {lead} geknüpft. Wie kommt {lead} dorthin?',
  'ask.bare':
    'Der Knüpffaden hängt {from} vom gehaltenen Faden und soll danach {to} von ihm hängen. Welcher Knoten macht das?',
  'ask.undo': 'Du willst einen Vorwärtsknoten aufknüpfen. Was löst du zuerst?',

  'why.inner':
    'Ein {kind}-Knoten lässt {lead} neben dem nächsten Grundfaden hängen, bereit zum Weiterknüpfen.',
  'why.edgeLast':
    'Der Leitfaden kommt auf die Innenseite von {held} zurück. So bleibt {held} ganz außen, und der Rand ist gerade.',
  'why.edgeFirst':
    'Das ist der Randknoten, der die Reihe beginnt; er bringt den Leitfaden auf die Seite, zu der er wandert.',
  'why.edgeSecond':
    'Das ist der zweite Randknoten an dieser Wende: Einer beendete die Reihe darüber, dieser beginnt die neue. Jede Reihe fasst den Randfaden einmal, also wächst der Rand so schnell wie die Mitte.',
  'why.wrapped':
    'Bei umschlungenen Rändern ist der letzte Knoten wie die anderen: Der Leitfaden kommt außerhalb von {held} heraus und geht um ihn herum in die nächste Reihe.',
  'why.through':
    'Die zweite Hälfte hält {old} fest, und sein letzter Knoten kann sich nicht lockern.',
  'why.behind':
    'Am Rand stünde ein gefangener Leitfaden seitlich heraus. Hinter dem Knoten ist er verborgen.',
  'why.down':
    'Er geht nach unten und hinten, aus dem Weg. Prüfe, ob der letzte Knoten der Reihe darüber noch gerade liegt: Zu starker Zug an {old} kippt ihn.',
  'why.string':
    'Der Faden, der knüpft, ist der, den man sieht. Im Innern des Knotens wird {held} nur gehalten.',
  'why.add':
    'Er wurde noch nicht gebraucht, also ist er neu. Das Fadenende hinten wird zum Schluss vernäht.',
  'why.takeUp':
    'Er hat hinter der Arbeit geruht. Die Strecke, die er dort überspannt, heißt Spannfaden, hier {columns} quer. Lass ihn flach liegen, weder straff noch als Schlinge.',
  'why.takeUpBelow':
    'Er hat hinter der Arbeit geruht. Die Strecke, die er dort überspannt, heißt Spannfaden, hier {columns} quer und {rows} abwärts. Lass ihn flach liegen, weder straff noch als Schlinge.',
  'why.bare': 'Ein {kind}-Knoten beginnt {from} und endet {to}.',
  'why.undo':
    'Aufgeknüpft wird in umgekehrter Folge: den letzten Steg lockern, den Leitfaden aus seiner Schlaufe zurückziehen, von hinten herumführen, abheben. Dann dasselbe mit der ersten Hälfte.',

  'wrong.side':
    'Ein {kind}-Knoten beginnt {start} von {held}, aber {lead} hängt {side}. Du müsstest ihn erst vorn herüberführen, wo man ihn sieht.',
  'wrong.bareSide': 'Ein {kind}-Knoten beginnt {start}, aber der Knüpffaden hängt {side}.',
  'wrong.bareEnd': 'Nach einem {kind}-Knoten hängt der Knüpffaden {end}.',
  'wrong.base':
    'Dann geht {held} um {lead} herum, und der Knoten zeigt {colour}, die Farbe von {held}. {lead} hängt darin fest und kommt nicht zum nächsten Knoten weiter. Im Alpha-Muster knüpfen nur Leitfäden.',
  'wrong.lead': 'Dann zeigt der Knoten {colour}, die Farbe von {lead}.',
  'wrong.neverAdded': '{lead} ruht nicht hinter der Arbeit: Er wurde noch nicht gebraucht.',
  'wrong.addedBefore':
    '{lead} ist schon in der Arbeit. Ein weiterer Faden dieser Farbe brächte nur noch ein Fadenende.',
  'wrong.apart':
    'Dann hängen {lead} und {held} nicht nebeneinander, und {lead} läuft quer über die Vorderseite.',
  'wrong.onlyPlace':
    'Die Farben werden wie gezeichnet, aber der Leitfaden ist nicht den richtigen Weg gegangen.',
  'wrong.firstHalf':
    'Die zweite Hälfte sitzt darauf und hält sie: Ein Faden kann nur auf dem Weg hinaus, auf dem er zuletzt kam.',
  'wrong.pull':
    'Ziehen macht den Knoten nur fester. Lockere stattdessen den letzten Steg mit einer stumpfen Nadel.',
  'wrong.notHeld':
    'Dann hält nichts {old} fest: Der letzte Knoten kann sich lockern, und das Ende kann herausrutschen.',

  'finding.wrong-kind':
    'Reihe {row}, Spalte {column}: Es ist ein anderer Knoten geknüpft, als dort hingehört. Der Leitfaden endet auf der falschen Seite.',
  'finding.edge-string-displaced':
    'Reihe {row}, Spalte {column}: Der Leitfaden endet außerhalb des Randfadens, der um einen Platz nach innen rückt. Der Rand springt, und der Leitfaden ist daneben zu sehen.',
  'finding.missing-knot':
    'Reihe {row}, Spalte {column}: Der Knoten fehlt, und der Leitfaden liegt lose über dem Grundfaden.',
  'finding.single-edge-knot':
    'Reihe {row}, Spalte {column}: Der Randfaden hat nur einen der beiden Randknoten dieser Wende. Der Rand zieht sich dort ein.',
  'finding.lead-caught-at-edge':
    'Reihe {row}, Spalte {column}: Der alte Leitfaden ist im Knoten am Rand gefangen und steht deshalb seitlich heraus.',
  'finding.lead-not-caught':
    'Reihe {row}, Spalte {column}: Nichts hält den alten Leitfaden. Sein letzter Knoten kann sich lockern, und hinten zeigt sich eine Schlinge.',
  'finding.colour-differs':
    'Reihe {row}, Spalte {column}: Der Knoten zeigt eine andere Farbe als die Zeichnung.',
  'finding.lead-path':
    'Reihe {row}, Spalte {column}: Der alte Leitfaden geht einen anderen Weg, als er soll. Er ist neben dem Rand zu sehen oder zieht den letzten Knoten der Reihe schief.',
  'finding.wrong-lead':
    'Reihe {row}, Spalte {column}: Hier knüpft ein Faden, der nicht knüpfen darf.',
  'finding.wrong-string':
    'Reihe {row}, Spalte {column}: Der Knoten ist an einen anderen Faden geknüpft, als er soll.',

  'group.begin': 'Für den Anfang',
  'group.edges': 'Ränder und Wenden',
  'group.changes': 'Farbwechsel',

  'four-knots.title': 'Die vier Knoten',
  'four-knots.asks': 'Welcher Knoten bringt den Leitfaden auf die andere Seite, welcher zurück?',
  'four-knots.1':
    'Ein halber Schlag ist das Kleinste, was du knüpfst. Ein Faden geht über einen anderen, hinten um ihn herum und durch die Schlaufe, die er gebildet hat, nach vorn.\nZwei halbe Schläge sind ein Knoten. Der Faden, der sich bewegt, ist der Knüpffaden; der im Innern ist der gehaltene Faden.',
  'four-knots.2':
    'Zwei gleiche halbe Schläge lassen die Fäden die Plätze tauschen. Beim Vorwärtsknoten wandert der Knüpffaden von links nach rechts, beim Rückwärtsknoten von rechts nach links.',
  'four-knots.3':
    'Zwei ungleiche Hälften bringen den Knüpffaden auf seine Ausgangsseite zurück. Ein Vorwärts-Rückwärts-Knoten beginnt und endet links, ein Rückwärts-Vorwärts-Knoten rechts.\nDiese beiden braucht man an den Rändern.',
  'strings.title': 'Grundfäden und Leitfäden',
  'strings.asks': 'Welcher Faden knüpft, an welchen wird geknüpft, und welcher ist zu sehen?',
  'strings.1':
    'In einem Alpha-Muster hängen die Grundfäden still, einer für jede Spalte der Zeichnung, von links gezählt. Ein Leitfaden knüpft der Reihe nach auf jeden von ihnen einen Knoten. Für jede Farbe gibt es einen Leitfaden: L1, L2 und so weiter.\nWas man von der fertigen Arbeit sieht, ist Leitfaden. Die Grundfäden stecken in den Knoten.',
  'edge-right.title': 'Ein gerader Rand {side}',
  'edge-right.asks': 'Wie bleibt der äußerste Faden am Ende der Reihe der äußerste?',
  'edge-right.1':
    'Der Leitfaden ist nach {side} gewandert. Auf dem letzten Grundfaden darf er nicht außen herauskommen: Man würde ihn dort sehen, und der Randfaden wäre nicht mehr der äußerste.\nDarum bringt der letzte Knoten den Leitfaden nach innen zurück.',
  'edge-left.title': 'Ein gerader Rand {side}',
  'edge-left.asks': 'Was ist auf dem Rückweg anders?',
  'edge-left.1':
    'Nach {side} ist alles gespiegelt. Die inneren Knoten sind {inner}-Knoten, und der letzte bringt den Leitfaden wieder auf die Innenseite des Randfadens.',
  'turn.title': 'Die Wende: warum zwei Randknoten',
  'turn.asks': 'Warum zwei Randknoten am selben Faden, und was geschieht bei nur einem?',
  'turn.1':
    'An einer Wende bekommt derselbe Randfaden zwei gleiche Knoten nacheinander: den letzten der endenden und den ersten der beginnenden Reihe.\nDas sieht nach einem zu viel aus. Ist es nicht: Jede Reihe knüpft jeden Grundfaden einmal.',
  'turn.2':
    'Hier ist die Wende zweimal, beide nach ihren Schritten geknüpft, und darunter das fertige Stück. Beim zweiten ist an jeder Wende nur ein Randknoten geknüpft. {missing} Knoten fehlen, alle am Rand: Dort wird der Randfaden nur halb so oft gefasst, der Leitfaden geht blank von einer Reihe zur nächsten, und der Rand zieht sich ein.',
  'wrapped.title': 'Umschlungene Ränder im Vergleich',
  'wrapped.asks': 'Wie sieht ein Rand aus, um den der Leitfaden herumgeht?',
  'wrapped.1':
    'Man kann auch anders wenden. Bei umschlungenen Rändern sind alle Knoten einer Reihe gleich, auch der letzte. Der Leitfaden kommt außerhalb des Randfadens heraus und geht um ihn herum in die nächste Reihe.',
  'wrapped.2':
    'Gerade und umschlungene Ränder, dieselbe Zeichnung. Bei umschlungenen Rändern zeigt sich an jeder Wende die Farbe des Leitfadens, und der Rand ist wellig. Keins von beiden ist falsch; mische sie nur nicht in einem Stück.',
  'change-within.title': 'Farbwechsel in der Reihe',
  'change-within.asks': 'Wohin kommt der alte Leitfaden, und was hält ihn fest?',
  'change-within.1':
    'Der nächste Knoten hat eine andere Farbe. Lege den alten Leitfaden beiseite, hole den neuen von hinten und knüpfe mit ihm den ersten halben Schlag. Jetzt kommt der alte Leitfaden unter den neuen, mitten durch den halb geknüpften Knoten. Die zweite Hälfte hält ihn fest.\nEr geht nach hinten und ruht dort, bis seine Farbe wieder gebraucht wird.',
  'change-after-first.title': 'Farbwechsel nach dem ersten Knoten',
  'change-after-first.asks': 'Was, wenn nur der Randknoten die alte Farbe hat?',
  'change-after-first.1':
    'Der erste Knoten der Reihe, ein Randknoten, hat die alte Farbe, der zweite die neue. Die Übergabe ist wie in der Reihe: Der alte Leitfaden wird von der zweiten Hälfte des ersten Knotens des neuen festgehalten.',
  'change-last.title': 'Farbwechsel am letzten Knoten',
  'change-last.asks':
    'Was, wenn nur der letzte Knoten die neue Farbe hat, und was, wenn der alte Leitfaden dort gefangen wird?',
  'change-last.1':
    'Nur der letzte Knoten der Reihe hat die neue Farbe. Hier wird der alte Leitfaden hinter und unter diesem Knoten vorbeigeführt und nicht darin gefangen.',
  'change-last.2':
    'Hier ist beides zu sehen; drehe die Bilder um, dann siehst du, wo der alte Leitfaden liegt. Hinten vorbeigeführt, kommt er gerade aus seinem eigenen letzten Knoten herunter und ist verborgen. Gefangen, wie man es in der Reihe täte, kommt er mitten aus dem Randknoten heraus. Es folgt kein weiterer Knoten, der sein Ende verbirgt, also steht es seitlich heraus.',
  'change-turn.title': 'Farbwechsel an der Wende',
  'change-turn.asks': 'Wie bleibt der letzte Knoten der Reihe darüber gerade liegen?',
  'change-turn.1':
    'Die nächste Reihe beginnt in einer anderen Farbe. Führe den alten Leitfaden nach unten und hinten, bevor der neue den Randknoten knüpft. Sieh dann den letzten Knoten der Reihe darüber an: Er soll gerade liegen wie die anderen. Wurde am alten Leitfaden gezogen, kippt der Knoten; gib nach, bis er gerade liegt.',
  'first-use.title': 'Ein Leitfaden zum ersten Mal',
  'first-use.asks': 'Woher kommt eine neue Farbe, und wo bleibt ihr Fadenende?',
  'first-use.1':
    'Eine Farbe, die noch nicht vorkam, braucht einen neuen Leitfaden. Setze ihn von hinten zwischen den Grundfäden an und lass sein Ende hinten hängen, lang genug, um es später zu vernähen.',
  'float.title': 'Ein Leitfaden kommt über einen Spannfaden zurück',
  'float.asks': 'Wie kommt ein ruhender Leitfaden zurück, und was liegt hinter der Arbeit?',
  'float.1':
    'Ein beiseitegelegter Leitfaden wird ein Stück weiter wieder gebraucht. Er wird von hinten geholt. Zwischen der Stelle, an der er ging, und der, an der er wiederkommt, liegt ein Spannfaden, hier {columns} Knoten lang, hinter der Arbeit, wo ihn niemand sieht.\nLass ihn flach liegen. Zu straff zieht er die Arbeit zusammen; zu locker bleibt er hängen.',
  'every-knot.title': 'Wechsel bei jedem Knoten',
  'every-knot.asks': 'Was, wenn jeder Knoten eine andere Farbe hat als der vorige?',
  'every-knot.1':
    'Wechselt die Farbe bei jedem Knoten, geht jeder Wechsel wie jeder andere: beiseitelegen, erste Hälfte, hindurchlegen, zweite Hälfte. Die beiden Leitfäden wechseln sich ab. Am letzten Knoten der Reihe gilt die Regel des Randes.',
  'run-out.title': 'Wenn ein Faden zu Ende geht',
  'run-out.asks': 'Was, wenn ein Faden zu kurz zum Weiterknüpfen ist?',
  'run-out.1':
    'Wechsle den Leitfaden, bevor der alte zu kurz zum Greifen ist, eine Handbreit vor seinem Ende. Ein neuer derselben Farbe übernimmt wie bei einem Farbwechsel: Der alte wird im ersten Knoten des neuen festgehalten, und sein Ende bleibt hinten hängen.\nVorn ist davon nichts zu sehen.',
  'undo.title': 'Einen Knoten aufknüpfen',
  'undo.asks': 'Wie geht ein Knoten wieder auf, ohne dass etwas leidet?',
  'undo.1':
    'Einen Fehler knüpft man am besten gleich auf. Jeder Zug geht rückwärts, der letzte zuerst. Hier wird ein Knoten aufgeknüpft: Sieh, wie der Leitfaden auf dem Weg hinausgeht, auf dem er kam.\nLockere einen festen Knoten mit einer stumpfen Nadel. Eine spitze spaltet die Garne.',
  'lesson.wayOf': 'Der Weg von {string}, von Anfang bis Ende',
  'choice.pair': 'Die Fäden auf den Plätzen {left} und {right}.',
  'choice.idleBoth': '{left} am linken und {right} am rechten Rand.',
  'choice.idleLeft': 'Nur {left} am linken Rand.',
  'choice.idleNone': 'Keiner: Jeder Faden gehört in jeder Reihe zu einem Knoten.',
  'ask.pair': 'Reihe 1 ist geknüpft. Welche Fäden verbindet der erste Knoten von Reihe {row}?',
  'ask.idle':
    'Reihe {row} eines Stücks aus {strings} Fäden: Welche Fäden gehören zu keinem ihrer Knoten?',
  'ask.latticeKind':
    'Reihe {row}, Knoten {knot}: {left} hängt links und {right} rechts. Das Muster soll weitergehen, wie es begonnen hat. Welchen Knoten knüpfst du?',
  'ask.outcome':
    'Links hängt ein Faden in {left}, rechts einer in {right}. Der Knoten soll {shows} zeigen, und danach gilt: {places}. Welcher Knoten macht das?',
  'why.pair':
    'Jede Reihe beginnt einen Platz neben der Reihe davor, wie Ziegel in einer Mauer. So trifft jeder Faden in jeder Reihe auf einen neuen Nachbarn.',
  'why.idle':
    'Die Reihe beginnt auf dem zweiten Platz. {left} hat links keinen Nachbarn und {right} rechts keinen: Beide hängen neben der Arbeit, bis die nächste Reihe sie wieder aufnimmt.',
  'why.latticeThrough':
    '{tying} knüpft und ist darum zu sehen; auf seinem Weg kommt er an {held} vorbei.',
  'why.latticeBack':
    '{tying} knüpft und ist darum zu sehen; danach hängt er wieder auf seiner Seite.',
  'why.outcome': 'Ein {kind}-Knoten zeigt hier {shows}, und danach gilt: {places}.',
  'lattice.theyChange': 'die beiden haben die Plätze getauscht',
  'lattice.theyStay': 'beide hängen, wo sie begonnen haben',
  'wrong.lattice':
    'Beim {kind}-Knoten knüpft der Faden, der {side} hängt, und ist zu sehen; danach gilt: {places}.',
  'wrong.latticeCount':
    'Wird alles Folgende wie geplant geknüpft, zeigen {count} Knoten eine andere Farbe.',
  'wrong.latticeOne':
    'Wird alles Folgende wie geplant geknüpft, zeigt {count} Knoten eine andere Farbe.',
  'wrong.pairAgain':
    'Das sind die Paare der Reihe darüber. Immer wieder miteinander verknüpft, werden es Paare, die nichts verbindet: Das Stück zerfällt.',
  'wrong.pairApart': 'Diese beiden hängen nicht nebeneinander: Ein Knoten verbindet nur Nachbarn.',
  'group.diagonal': 'Diagonales Knüpfen',
  'brick-row.title': 'Wie eine Ziegelreihe zu lesen ist',
  'brick-row.asks': 'Welche Fäden werden in einer Reihe verbunden, und welche in der nächsten?',
  'brick-row.1':
    'Beim diagonalen Knüpfen gibt es weder Grundfäden noch Leitfäden. Alle Fäden hängen nebeneinander, jeder auf seinem Platz, und jeder knüpft oder wird gehalten, wie es gerade kommt. Sie heißen nach dem Platz, auf dem sie am Anfang hängen: S1 ganz links, dann S2 und so weiter.\nEine Reihe verbindet Nachbarn zu Paaren: die Fäden auf den Plätzen 1 und 2, die auf den Plätzen 3 und 4 und so fort.',
  'brick-row.2':
    'Die nächste Reihe beginnt einen Platz daneben, wie in einer Ziegelmauer: Plätze 2 und 3, dann 4 und 5. So liest du ein Muster: Reihe für Reihe, jede Reihe von links, und in jeder Reihe um einen halben Knoten versetzt.',
  'working-pair.title': 'Vier Knoten zwischen zwei Arbeitsfäden',
  'working-pair.asks': 'Was macht jeder der vier Knoten, wenn beide Fäden arbeiten?',
  'working-pair.1':
    'Zwischen zwei Arbeitsfäden entscheidet jeder Knoten zweierlei: welcher von beiden zu sehen ist, und ob sie die Plätze tauschen. Zu sehen ist der, der knüpft.\nBeim Vorwärtsknoten knüpft der linke Faden, beim Rückwärtsknoten der rechte. Bei beiden tauschen die Fäden die Plätze.',
  'working-pair.2':
    'Beim Vorwärts-Rückwärts-Knoten knüpft der linke Faden und kommt nach links zurück. Beim Rückwärts-Vorwärts-Knoten knüpft der rechte und kommt nach rechts zurück. Beide Fäden hängen, wo sie begonnen haben.',
  'idle-string.title': 'Der Faden, der am Rand ruht',
  'idle-string.asks':
    'Warum bleibt der äußerste Faden in manchen Reihen übrig, und was wird aus ihm?',
  'idle-string.1':
    'Eine Reihe, die auf dem zweiten Platz beginnt, hat für den Faden auf dem ersten keinen Nachbarn. Dieser Faden ruht: Er hängt eine Reihe lang neben der Arbeit und wird in der nächsten wieder geknüpft. Am anderen Rand kann es ebenso sein.\nLass ihn weder straff noch locker hängen. Straff zieht er den Rand ein, locker bildet er dort eine Schlinge.',
  'stripe.title': 'Ein Diagonalstreifen von Anfang bis Ende',
  'stripe.asks': 'Wie zeichnet ein einziger Faden einen Streifen quer durch das Stück?',
  'stripe.1':
    'Ein Streifen ist der Weg eines Fadens. {string} knüpft den ersten Knoten mit dem Nachbarn, und sie tauschen die Plätze. In der nächsten Reihe trifft er den nächsten Faden, knüpft wieder und kommt so mit jeder Reihe einen Platz weiter.\nWo er knüpft, ist seine Farbe zu sehen.',
  'stripe.2':
    'Hier ist der ganze Weg von {string} gekennzeichnet. Er geht quer durch das Stück und knüpft in jeder Reihe. Am Rand kehrt er um, und auf dem Rückweg wird er in den Knoten der anderen gehalten, wo er verborgen ist.\nDrehe das Stück um, dann siehst du ihn von hinten.',
  'chevron.title': 'Ein Winkelmuster',
  'chevron.asks': 'Wie treffen sich zwei Schrägen in der Mitte?',
  'chevron.1':
    'Ein Winkelmuster ist ein Streifen mit seinem Spiegelbild daneben. In der linken Hälfte knüpfen die Fäden vorwärts, zur Mitte hin; in der rechten rückwärts, auch zur Mitte hin. Darum hängen die Farben am Anfang spiegelbildlich.',
  'chevron.2':
    'In der Mitte treffen sich zwei Fäden gleicher Farbe. Welcher von ihnen knüpft, ist für die Farben gleich, aber einer muss es tun, sonst hingen die beiden Hälften nicht zusammen.',
};
