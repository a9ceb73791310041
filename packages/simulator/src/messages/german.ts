import type { MessageKey } from './english.js';

/**
 * German. Names of strings stand where the fourth case is asked for; `heldAt` is the third case,
 * `tyingFirst` the first, at the head of a sentence.
 */
export const GERMAN: Readonly<Record<MessageKey, string>> = {
  'kind.forward': 'Vorwärts',
  'kind.backward': 'Rückwärts',
  'kind.forward-backward': 'Vorwärts-Rückwärts',
  'kind.backward-forward': 'Rückwärts-Vorwärts',
  'half.forward': 'vorwärts',
  'half.backward': 'rückwärts',
  'side.left': 'links',
  'side.right': 'rechts',

  'name.tying': 'den Knüpffaden',
  'name.tyingFirst': 'Der Knüpffaden',
  'name.held': 'den gehaltenen Faden',
  'name.heldAt': 'dem gehaltenen Faden',
  'name.base': 'Grundfaden {number}',
  'name.lead': '{id} ({colour})',

  'label.ties': 'knüpft',
  'label.held': 'gehalten',
  'label.old': 'alter Leitfaden',
  'label.next': 'nächster Zug',

  'knot.title': '{kind}-Knoten',
  'knot.ready': 'Bereit für einen {kind}-Knoten. {tyingFirst} hängt {side} von {heldAt}.',
  'knot.firstHalf': 'Erste Hälfte: halber Schlag {way}',
  'knot.secondHalf': 'Zweite Hälfte: halber Schlag {way}',
  'knot.saidFirst': 'Erste Hälfte, {way}, Zug {move} von 4. {text}',
  'knot.saidSecond': 'Zweite Hälfte, {way}, Zug {move} von 4. {text}',
  'knot.wholeFirst': 'Erste Hälfte, {way}. {text}',
  'knot.wholeSecond': 'Zweite Hälfte, {way}. {text}',
  'knot.done': 'Der {kind}-Knoten ist geknüpft.',
  'knot.bar': 'Lege {tying} von {from} nach {to} über {held}. Das ist der Steg.',
  'knot.barAgain':
    'Lege {tying} unterhalb der ersten Hälfte von {from} nach {to} über {held}. Das ist der Steg.',
  'knot.behind': 'Führe ihn hinter {heldAt} zurück nach {from}, oberhalb des Stegs.',
  'knot.through': 'Hole ihn durch die Schlaufe zwischen ihm selbst und {heldAt} nach vorn.',
  'knot.snugOverBar':
    'Ziehe ihn fest. Er hängt wieder {from}, über seinem eigenen Steg, bereit für die zweite Hälfte.',
  'knot.snugAcross':
    'Ziehe ihn fest. Er läuft über {held} weiter nach {to}, bereit für die zweite Hälfte.',
  'knot.snugChanged':
    'Ziehe ihn fest. Er läuft über {held} weiter nach {to}: Die beiden Fäden haben die Plätze getauscht.',
  'knot.snugBack':
    'Ziehe ihn fest. Er läuft über {held} weiter nach {to}: Beide Fäden hängen, wo sie begonnen haben.',
  'undo.firstHalf': 'Die erste Hälfte lösen: halber Schlag {way}',
  'undo.secondHalf': 'Die zweite Hälfte lösen: halber Schlag {way}',
  'undo.ready':
    'Der {kind}-Knoten ist geknüpft. Gelöst wird er von der zweiten Hälfte an rückwärts.',
  'undo.saidFirst': 'Erste Hälfte, {way}, Zug {move} von 4 gelöst. {text}',
  'undo.saidSecond': 'Zweite Hälfte, {way}, Zug {move} von 4 gelöst. {text}',
  'undo.done': 'Der Knoten ist gelöst: Beide Fäden hängen frei.',
  'undo.loosen': 'Lockere diese Hälfte und ziehe {tying} ein Stück in die Schlaufen zurück.',
  'undo.through': 'Ziehe ihn wieder nach hinten aus der Schlaufe heraus.',
  'undo.behind': 'Führe ihn hinter {heldAt} von {from} nach {to}.',
  'undo.bar': 'Hebe den Steg ab: Lege den Faden über {held} von {to} nach {from} zurück.',
  'knot.picture': 'Ein {kind}-Knoten beim Knüpfen',
  'knot.pictureOn': 'Ein {kind}-Knoten beim Knüpfen an {heldAt}',
  'knot.pictureDone': 'Ein fertiger {kind}-Knoten',
  'picture.mirrored': '{picture}, gespiegelt für Linkshänder',
  'picture.from': '{picture}, Ansicht: {view}',

  'row.none': 'Keine Reihe zu zeigen.',
  'row.noneName': 'Keine Reihe',
  'row.rightwards': 'Reihe {row} beim Knüpfen, von links nach rechts',
  'row.leftwards': 'Reihe {row} beim Knüpfen, von rechts nach links',
  'row.heading': 'Reihe {row}, Knoten {knot} von {knots}: {kind} auf {held}, geknüpft mit {lead}',
  'row.headingEdge':
    'Reihe {row}, Knoten {knot} von {knots}: Randknoten, {kind} auf {held}, geknüpft mit {lead}',
  'row.move': '{heading}. Zug {move} von {moves}. {text}',
  'row.done': 'Die Reihe ist fertig.',
  'row.layAside': 'Lege {old} beiseite.',
  'row.passBehind':
    'Führe {old} hinter und unter diesem letzten Knoten vorbei, ohne ihn darin zu fangen.',
  'row.takeDown': 'Führe {old} nach unten und hinten; prüfe, ob der letzte Knoten gerade liegt.',
  'row.layThrough': 'Lege {old} unter {lead} mitten durch diesen halb geknüpften Knoten.',
  'row.locks': 'Sie hält {old} fest, der jetzt nach hinten geht.',
  'row.join': 'Setze {lead} von hinten neu an, um in derselben Farbe weiterzuknüpfen.',
  'row.firstUse':
    'Setze {lead} von hinten als neuen Leitfaden an; sein Fadenende bleibt auf der Rückseite.',
  'row.takeUp': 'Hole {lead} von hinten wieder nach vorn.',
  'row.flatFloat': 'Lass den Spannfaden hinter der Arbeit flach liegen.',
  'row.first':
    'Erste Hälfte, {way}: {lead} von {from} nach {to} über {held}, dahinter oberhalb des Stegs zurück nach {from}, durch die Schlaufe nach vorn und festziehen.',
  'row.second':
    'Zweite Hälfte, {way}: {lead} von {from} nach {to} über {held}, dahinter oberhalb des Stegs zurück nach {from}, durch die Schlaufe nach vorn und festziehen.',

  'piece.none': 'Kein Stück zu zeigen.',
  'piece.picture': 'Ein Stück aus {rows} Reihen mit je {columns} Knoten',
  'piece.heading': 'Reihe {row}, Knoten {knot} von {knots}: {kind} auf {held}, geknüpft mit {lead}',
  'piece.begin': 'Die Grundfäden hängen bereit. Noch ist nichts geknüpft.',
  'piece.done': 'Das Stück ist fertig: {rows} Reihen mit je {columns} Knoten.',

  'lattice.picture': 'Ein Diagonalstück aus {rows} Reihen mit {strings} Fäden',
  'lattice.heading':
    'Reihe {row}, Knoten {knot} von {knots}, Plätze {left} und {right}: {kind}, {tying} knüpft auf {held}',
  'lattice.begin': '{strings} Fäden hängen bereit. Noch ist nichts geknüpft.',
  'lattice.done': 'Das Stück ist fertig: {rows} Reihen mit {strings} Fäden.',
  'lattice.row': 'Diagonalreihe {row} beim Knüpfen',
  'lattice.changed': 'Die beiden haben die Plätze getauscht.',
  'lattice.back': 'Beide hängen, wo sie begonnen haben.',
  'lattice.idlesLeft': '{string} am linken Rand hat in dieser Reihe keinen Nachbarn und ruht.',
  'lattice.idlesRight': '{string} am rechten Rand hat in dieser Reihe keinen Nachbarn und ruht.',

  'step.half': 'halben Schlag',
  'step.step': 'Schritt',
  'step.knot': 'Knoten',
  'view.front': 'vorn',
  'view.back': 'hinten',
  'view.side': 'Seite',
  'view.edge': 'Kante',
  'view.hands': 'Blick der Hände',
  'view.frontCap': 'Vorderseite',
  'view.backCap': 'Rückseite',
  'view.sideCap': 'Von der Seite',
  'view.edgeCap': 'Von der Kante',
  'view.handsCap': 'Wie deine Hände es sehen',

  'control.movingPicture': 'bewegtes Bild',
  'control.stillPicture': 'Standbild',
  'control.place': 'Stelle im Ablauf',
  'control.play': 'Abspielen',
  'control.pause': 'Anhalten',
  'control.back': 'Einen {step} zurück',
  'control.on': 'Einen {step} weiter',
  'control.seeBack': 'Rückseite zeigen',
  'control.seeFront': 'Vorderseite zeigen',
  'control.speed': 'Tempo',
  'control.more': 'Mehr Ansichten',
  'control.view': 'Ansicht',
  'control.loop': 'Diesen Schritt wiederholen',
  'control.ghost': 'Den nächsten Zug zeigen',
  'control.trail': 'Den bisherigen Weg des Leitfadens zeigen',
  'control.magnifier': 'Die Kreuzung vergrößern',
  'speed.0.25': 'Sehr langsam',
  'speed.0.5': 'Langsam',
  'speed.1': 'Ruhig',
  'speed.1.5': 'Zügig',
  'speed.2': 'Schnell',
  'hint.drag': 'Ziehe am Bild, um es zu drehen.',
  'hint.keys':
    'Wenn das Bild den Fokus hat: Leertaste spielt ab; Pfeil links und rechts gehen Zug für Zug, mit Umschalttaste um einen {step}; Pfeil auf und ab ein wenig; Pos1 und Ende an Anfang und Ende; F wendet; W, A, S und D drehen die Ansicht; 0 blickt gerade darauf.',

  'notice.notLoaded': 'Das Bild konnte nicht geladen werden. Die Worte nennen trotzdem jeden Zug.',
  'notice.lost':
    'Der Browser hat das 3D-Bild vorübergehend weggenommen; diese Zeichnung zeigt dieselben Fäden.',
  'notice.noWebgl':
    'Das 3D-Bild kann nicht gezeigt werden: Dieser Browser bietet kein WebGL. Diese Zeichnung zeigt dieselben Fäden.',
};
