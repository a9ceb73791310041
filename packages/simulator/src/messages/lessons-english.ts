/** What the lessons say, in English. A line break parts paragraphs. */
export const LESSONS_ENGLISH = {
  'colour.lake': 'lake blue',
  'colour.buoy': 'buoy orange',
  'colour.reed': 'reed green',
  'colour.undyed': 'undyed',

  'lesson.page': 'Page {page} of {pages}',
  'lesson.next': 'Next page',
  'lesson.before': 'Page before',
  'lesson.again': 'From the beginning',
  'lesson.none': 'There is no such lesson.',
  'lesson.question': 'Your turn',
  'lesson.choose': 'Choose one. You can try them all: each shows what comes of it.',
  'lesson.right': 'Right.',
  'lesson.notThis': 'Not this one.',
  'lesson.becomes': 'What comes of it',
  'lesson.watch': 'Watch it being tied',
  'lesson.drawn': 'As drawn',
  'lesson.yours': 'With your answer',
  'lesson.check': 'What checking the steps finds:',
  'lesson.marked': 'Places that differ have a dashed frame.',
  'lesson.situation': 'Before this knot',
  'lesson.straight': 'Straight edges',
  'lesson.wrapped': 'Wrapped edges',
  'lesson.two': 'Two edge knots at each turn',
  'lesson.one': 'One edge knot at each turn',
  'lesson.behind': 'Passed behind, as it should be',
  'lesson.caught': 'Caught in the last knot',

  'choice.forward': 'Forward: two forward half hitches.',
  'choice.backward': 'Backward: two backward half hitches.',
  'choice.forward-backward': 'Forward-backward: a forward half hitch, then a backward one.',
  'choice.backward-forward': 'Backward-forward: a backward half hitch, then a forward one.',
  'choice.none': 'None here: go straight on to the next base string.',
  'choice.through': 'Lay it under the new lead, through the middle of the half-made knot.',
  'choice.behind': 'Pass it behind and under this knot, without catching it in the knot.',
  'choice.down': 'Take it down and behind before this knot is tied.',
  'choice.string': '{string} ties.',
  'choice.add': 'Add {lead} from behind, with its tail left at the back.',
  'choice.takeUp': 'Take {lead} up from behind, where it is resting.',
  'choice.faraway': 'Bring {lead} in at the far edge and lead it across the front.',
  'choice.lastHalf': 'The second half hitch, tied last.',
  'choice.firstHalf': 'The first half hitch, tied first.',
  'choice.pull': 'Neither: pull hard on the lead.',

  'ask.kind':
    'Row {row}, knot {knot}: {lead} hangs to the {side} of {held}. Which knot do you tie?',
  'ask.route': 'Row {row}, knot {knot}: {lead} takes over. What do you do with {old}?',
  'ask.string': 'Row {row}, knot {knot} is to show {colour}. Which string ties it?',
  'ask.entry': 'Row {row}, knot {knot} is to be tied by {lead}. How does {lead} get there?',
  'ask.bare':
    'The tying string hangs to the {from} of the held string and must hang to the {to} of it afterwards. Which knot does that?',
  'ask.undo': 'You want to undo a forward knot. What comes out first?',

  'why.inner': 'A {kind} knot leaves {lead} beside the next base string, ready to go on.',
  'why.edgeLast':
    'The lead comes back to the inside of {held}. So {held} stays outermost, and the edge is straight.',
  'why.edgeFirst':
    'It is the edge knot that starts the row, and brings the lead to the side it travels to.',
  'why.edgeSecond':
    'It is the second edge knot of this turn: one ended the row above, this one starts the new row. Each row holds the edge string once, so the edge grows as fast as the middle.',
  'why.wrapped':
    'With wrapped edges the last knot is like the others: the lead comes out beyond {held} and goes round it into the next row.',
  'why.through': 'The second half locks {old}, and its last knot cannot work loose.',
  'why.behind':
    'At the edge a caught lead would stick out at the side. Behind the knot it is hidden.',
  'why.down':
    'It goes down and behind, out of the way. Check that the last knot of the row above still lies level: pulling {old} too hard tilts it.',
  'why.string': 'The string that ties is the one that shows. Inside the knot, {held} is only held.',
  'why.add':
    'It has not been used before, so it is new. The tail at the back is finished at the end.',
  'why.takeUp':
    'It has been resting behind the work. The stretch it spans there is called a float, here {columns} across. Leave it flat, neither tight nor hanging in a loop.',
  'why.takeUpBelow':
    'It has been resting behind the work. The stretch it spans there is called a float, here {columns} across and {rows} down. Leave it flat, neither tight nor hanging in a loop.',
  'why.bare': 'A {kind} knot begins on the {from} and ends on the {to}.',
  'why.undo':
    'Work comes undone in the opposite order: loosen the last bar, draw the lead back out of its loop, bring it round from behind, lift it off. Then the same for the first half.',

  'wrong.side':
    'A {kind} knot begins on the {start} of {held}, but {lead} hangs on the {side}. You would first have to carry it across the front, where it shows.',
  'wrong.bareSide':
    'A {kind} knot begins on the {start}, but the tying string hangs on the {side}.',
  'wrong.bareEnd': 'A {kind} knot leaves the tying string on the {end}.',
  'wrong.base':
    'Then {held} goes round {lead}, and the knot shows {colour}, the colour of {held}. {lead} is left hanging inside it and cannot go on to the next knot. Only leads tie in an alpha pattern.',
  'wrong.lead': 'Then the knot shows {colour}, the colour of {lead}.',
  'wrong.neverAdded': '{lead} is not resting behind the work: it has not been used yet.',
  'wrong.addedBefore':
    '{lead} is in the work already. Another string of that colour would only leave one more tail.',
  'wrong.apart': 'Then {lead} and {held} do not hang side by side, and {lead} crosses the front.',
  'wrong.onlyPlace': 'The colours come out as drawn, but the lead has not gone the way it should.',
  'wrong.firstHalf':
    'The second half sits on it and holds it: a string can only leave by the way it came last.',
  'wrong.pull':
    'Pulling only draws the knot tighter. Loosen the last bar with a blunt needle instead.',
  'wrong.notHeld':
    'Nothing holds {old} then: its last knot can work loose, and its end can slip out.',

  'finding.wrong-kind':
    'Row {row}, column {column}: another knot is tied than belongs there. The lead ends on the wrong side.',
  'finding.edge-string-displaced':
    'Row {row}, column {column}: the lead ends outside the edge string, which moves in by one place. The edge steps, and the lead shows beside it.',
  'finding.missing-knot':
    'Row {row}, column {column}: the knot is missing, and the lead lies loose across the base string.',
  'finding.single-edge-knot':
    'Row {row}, column {column}: the edge string has only one of the two edge knots of this turn. The edge pulls in there.',
  'finding.lead-caught-at-edge':
    'Row {row}, column {column}: the old lead is caught in the knot at the edge, so it sticks out at the side.',
  'finding.lead-not-caught':
    'Row {row}, column {column}: nothing holds the old lead. Its last knot can work loose, and a loop shows at the back.',
  'finding.colour-differs':
    'Row {row}, column {column}: the knot shows another colour than is drawn.',
  'finding.lead-path':
    'Row {row}, column {column}: the old lead goes another way than it should. It shows beside the edge, or pulls the last knot of the row out of level.',
  'finding.wrong-lead': 'Row {row}, column {column}: a string ties here that must not tie.',
  'finding.wrong-string':
    'Row {row}, column {column}: the knot is tied onto another string than it should be.',

  'group.begin': 'To begin with',
  'group.edges': 'Edges and turns',
  'group.changes': 'Changing colour',

  'four-knots.title': 'The four knots',
  'four-knots.asks': 'Which knot takes the lead to the other side, and which brings it back?',
  'four-knots.1':
    'A half hitch is the smallest thing you tie. One string goes over another, round behind it, and up through the loop it has made.\nTwo half hitches make one knot. The string that moves is the tying string; the one inside is the held string.',
  'four-knots.2':
    'Two half hitches of the same kind let the strings change places. In a forward knot the tying string goes from the left to the right; in a backward knot from the right to the left.',
  'four-knots.3':
    'Two unlike halves bring the tying string back to the side it began on. A forward-backward knot begins and ends on the left, a backward-forward knot on the right.\nThese two are used at the edges.',
  'strings.title': 'Base strings and leads',
  'strings.asks': 'Which string ties, which is tied onto, and which one shows?',
  'strings.1':
    'In an alpha pattern the base strings hang still, one for each column of the drawing, counted from the left. A leading string, the lead, ties a knot on every one of them in turn. There is one lead for each colour: L1, L2 and so on.\nWhat you see of the finished work is lead. The base strings are inside the knots.',
  'edge-right.title': 'A straight edge on the {side}',
  'edge-right.asks': 'What keeps the outermost string outermost at the end of a row?',
  'edge-right.1':
    'The lead has travelled to the {side}. On the last base string it must not come out on the outside: it would show there, and the edge string would no longer be outermost.\nSo the last knot brings the lead back to the inside.',
  'edge-left.title': 'A straight edge on the {side}',
  'edge-left.asks': 'What is different on the way back?',
  'edge-left.1':
    'Going to the {side} everything is mirrored. The inner knots are {inner} knots, and the last one again brings the lead back to the inside of the edge string.',
  'turn.title': 'The turn: why two edge knots',
  'turn.asks': 'Why two edge knots on the same string, and what happens with only one?',
  'turn.1':
    'At a turn the same edge string gets two knots of the same kind, one after the other: the last of the row that ends and the first of the row that begins.\nThey look like one too many. They are not: each row ties each base string once.',
  'turn.2':
    'Here is the turn twice, both knotted by their steps, and the finished piece below. On the second one, only one edge knot is tied at each turn. {missing} knots are missing, every one at an edge: there the edge string is held half as often, the lead runs bare from one row to the next, and the edge pulls in.',
  'wrapped.title': 'Wrapped edges compared',
  'wrapped.asks': 'What does an edge look like when the lead goes round it?',
  'wrapped.1':
    'There is another way to turn. With wrapped edges all knots of a row are alike, the last one too. The lead comes out beyond the edge string and goes round it into the next row.',
  'wrapped.2':
    'Straight edges and wrapped edges, the same drawing. With wrapped edges the colour of the lead shows at every turn and the edge waves. Neither is wrong; do not mix them in one piece.',
  'change-within.title': 'Changing colour within a row',
  'change-within.asks': 'Where does the old lead go, and what holds it?',
  'change-within.1':
    'The next knot has another colour. Lay the old lead aside, bring the new one in from behind, and tie the first half hitch with it. Now the old lead goes under the new one, through the middle of the half-made knot. The second half locks it.\nIts end goes to the back and rests there until that colour is needed again.',
  'change-after-first.title': 'Changing colour after the first knot',
  'change-after-first.asks': 'What if only the edge knot has the old colour?',
  'change-after-first.1':
    'The first knot of the row, an edge knot, is in the old colour; the second is in the new one. The hand-over is the same as within a row: the old lead is locked by the second half of the new lead’s first knot.',
  'change-last.title': 'Changing colour at the last knot',
  'change-last.asks':
    'What if only the last knot has the new colour, and what if the old lead is caught there?',
  'change-last.1':
    'Only the last knot of the row has the new colour. Here the old lead is passed behind and under that knot and is not caught in it.',
  'change-last.2':
    'Here are both ways; turn them over to see where the old lead lies. Passed behind, it comes straight down from its own last knot and is hidden. Caught, as it would be within a row, it comes out of the middle of the edge knot. No further knot follows to hide its end, so it sticks out at the side.',
  'change-turn.title': 'Changing colour at the turn',
  'change-turn.asks': 'How does the last knot of the row above keep lying level?',
  'change-turn.1':
    'The next row begins in another colour. Take the old lead down and behind before the new one ties the edge knot. Then look at the last knot of the row above: it should lie level, as the others do. If the old lead was pulled, the knot tilts; ease it until it lies level.',
  'first-use.title': 'A lead’s first use',
  'first-use.asks': 'Where does a new colour come from, and where does its end stay?',
  'first-use.1':
    'A colour that has not been used yet needs a new lead. Add it from behind, between the base strings, and leave its tail at the back, long enough to be finished later.',
  'float.title': 'A lead comes back over a float',
  'float.asks': 'How does a resting lead come back, and what lies behind the work?',
  'float.1':
    'A lead that was laid aside is needed again some way on. It is taken up from behind. Between where it left and where it comes up lies a float, {columns} knots long here, behind the work where nobody sees it.\nLeave it flat. Too tight it gathers the work; too loose it catches on things.',
  'every-knot.title': 'Changing at every knot',
  'every-knot.asks': 'What if each knot has another colour than the one before?',
  'every-knot.1':
    'When the colour changes at every knot, every change is done in the same way as any other: lay aside, first half, lay through, second half. The two leads take turns. At the last knot of the row the rule of the edge comes first.',
  'run-out.title': 'When a thread runs out',
  'run-out.asks': 'What if a thread is too short to go on?',
  'run-out.1':
    'Change leads before the old one is too short to handle, a hand’s breadth from its end. A new lead of the same colour takes over as at a change of colour: the old one is locked in the new one’s first knot, and its end stays at the back as a tail.\nNothing of it shows at the front.',
  'undo.title': 'Undoing a knot',
  'undo.asks': 'How does a knot come out again without harm?',
  'undo.1':
    'A mistake is best undone at once. Every move is done backwards, the last one first. Here a knot is undone: watch the lead leave by the way it came.\nUse a blunt needle to loosen a tight knot. A pointed one splits the yarns.',
  'lesson.wayOf': 'The way of {string}, from start to finish',
  'choice.pair': 'The strings in slots {left} and {right}.',
  'choice.idleBoth': '{left} at the left edge and {right} at the right edge.',
  'choice.idleLeft': 'Only {left} at the left edge.',
  'choice.idleNone': 'None: every string is in a knot of every row.',
  'ask.pair': 'Row 1 is tied. Which strings does the first knot of row {row} tie together?',
  'ask.idle': 'Row {row} of a piece of {strings} strings: which strings are in none of its knots?',
  'ask.latticeKind':
    'Row {row}, knot {knot}: {left} hangs on the left and {right} on the right. The pattern is to go on as it has begun. Which knot do you tie?',
  'ask.outcome':
    'On the left hangs a string in {left}, on the right one in {right}. The knot is to show {shows}, and afterwards {places}. Which knot does that?',
  'why.pair':
    'Each row begins one slot to the side of the row before it, as bricks in a wall do. So every string meets a new neighbour in every row.',
  'why.idle':
    'The row begins at the second slot. {left} has no neighbour on its left, and {right} none on its right: both hang beside the work until the next row takes them in again.',
  'why.latticeThrough': '{tying} ties, so its colour shows, and goes on past {held} on its way.',
  'why.latticeBack': '{tying} ties, so its colour shows, and comes back to its own side.',
  'why.outcome': 'A {kind} knot shows {shows} here, and {places}.',
  'lattice.theyChange': 'the two have changed places',
  'lattice.theyStay': 'both hang where they began',
  'wrong.lattice':
    'In a {kind} knot the string on the {side} ties and shows, and afterwards {places}.',
  'wrong.latticeCount':
    'If all that follows is tied as planned, {count} knots show another colour.',
  'wrong.latticeOne': 'If all that follows is tied as planned, {count} knot shows another colour.',
  'wrong.pairAgain':
    'Those are the pairs of the row above. Tied together again and again, they make pairs that nothing joins: the piece falls apart.',
  'wrong.pairApart': 'Those two do not hang side by side: a knot ties neighbours only.',
  'group.diagonal': 'Diagonal work',
  'brick-row.title': 'How a row of bricks is read',
  'brick-row.asks': 'Which strings are tied together in a row, and which in the next?',
  'brick-row.1':
    'In diagonal work there are no base strings and no leads. All strings hang side by side, each in a slot, and every string ties or is tied in its turn. They are named by the slot in which they hang at the start: S1 at the left, then S2 and so on.\nA row ties neighbours in pairs: the strings in slots 1 and 2, those in slots 3 and 4, and so on.',
  'brick-row.2':
    'The next row begins one slot to the side, as in a wall of bricks: slots 2 and 3, then 4 and 5. Read a pattern so: row by row, in each row from the left, and in every row move over by half a knot.',
  'working-pair.title': 'Four knots between two working strings',
  'working-pair.asks': 'What does each of the four knots do when both strings work?',
  'working-pair.1':
    'Between two working strings each knot decides two things: which of them shows, and whether they change places. The one that ties is the one that shows.\nIn a forward knot the left string ties, in a backward knot the right one. In both the two strings change places.',
  'working-pair.2':
    'In a forward-backward knot the left string ties and comes back to the left. In a backward-forward knot the right string ties and comes back to the right. The two strings hang where they began.',
  'idle-string.title': 'The string that idles at the edge',
  'idle-string.asks': 'Why is the outermost string left out in some rows, and what becomes of it?',
  'idle-string.1':
    'A row that begins at the second slot has no neighbour for the string in the first. That string idles: it hangs down beside the work for one row and is tied again in the next. On the other edge it may be the same.\nLet it hang neither tight nor slack. Pulled tight it gathers the edge, left slack it makes a loop there.',
  'stripe.title': 'A diagonal stripe from start to finish',
  'stripe.asks': 'How does one string draw a stripe across the piece?',
  'stripe.1':
    'A stripe is the way of one string. {string} ties its first knot with its neighbour, and they change places. In the next row it meets the next string, ties again, and so goes one slot further with every row.\nWherever it ties, its colour shows.',
  'stripe.2':
    'Here the whole way of {string} is marked. It goes across the piece, tying in every row. At the edge it turns, and on its way back it is held in the knots of others, where it is hidden.\nTurn the piece over to see it from behind.',
  'chevron.title': 'A chevron',
  'chevron.asks': 'How do two slopes meet in the middle?',
  'chevron.1':
    'A chevron is a stripe with its mirror image beside it. In the left half strings tie forward, towards the middle; in the right half they tie backward, also towards the middle. So the colours hang mirrored at the start.',
  'chevron.2':
    'In the middle two strings of one colour meet. Which of them ties makes no difference to the colours, but one of them has to, or the two halves would hang apart.',
} as const;

export type LessonKey = keyof typeof LESSONS_ENGLISH;
