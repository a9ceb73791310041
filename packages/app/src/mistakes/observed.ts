import { Back, Edge, Look, type Seen, Sight, Stick } from '@halfhitch/core';

/** Rows that are spelled out of those that differ. */
const SPELLED_OUT = 6;

/** Whether a cell looks other than it should. */
export function differsAt(made: Seen, sound: Seen, row: number, column: number): boolean {
  if (row >= sound.rows || row >= made.rows) return true;
  const cell = row * made.columns + column;
  return (
    made.cells[cell] !== sound.cells[cell] ||
    made.looks[cell] !== sound.looks[cell] ||
    made.backs[cell] !== sound.backs[cell]
  );
}

/** What the maker could notice of a mistaken piece beside a sound one: a sentence for each row. */
export function observedInWords(made: Seen, sound: Seen): string[] {
  const told: string[] = [];
  let rows = 0;
  let last = -1;
  const common = Math.min(made.rows, sound.rows);
  for (let row = 0; row < common; row++) {
    const things = rowInWords(made, sound, row);
    if (things.length === 0) continue;
    rows++;
    last = row;
    if (rows <= SPELLED_OUT) told.push(`Row ${row + 1}: ${things.join('; ')}.`);
  }
  const more = rows - SPELLED_OUT;
  if (more > 0) {
    told.push(
      more === 1
        ? `Row ${last + 1} differs as well.`
        : `${more} more rows differ, down to row ${last + 1}.`,
    );
  }
  if (made.rows > sound.rows) told.push('The piece comes out a row too long.');
  else if (made.rows < sound.rows) told.push('The piece comes out a row too short.');
  else if (last >= 0 && last + 1 < common) {
    told.push(
      last + 2 === common
        ? `Row ${last + 2} is as drawn again.`
        : `From row ${last + 2} on everything looks as drawn again.`,
    );
  }
  if (told.length === 0) told.push('Nothing of it can be seen in the finished piece.');
  return told;
}

function rowInWords(made: Seen, sound: Seen, row: number): string[] {
  const { columns } = made;
  const bare: number[] = [];
  const coloured: number[] = [];
  const half: number[] = [];
  const two: number[] = [];
  const kinds: number[] = [];
  const loops: number[] = [];
  for (let column = 0; column < columns; column++) {
    const cell = row * columns + column;
    const look = made.looks[cell];
    if (made.cells[cell] !== sound.cells[cell]) {
      if (made.cells[cell] === Sight.bare) bare.push(column);
      else coloured.push(column);
    }
    if (look !== sound.looks[cell]) {
      if (look === Look.half) half.push(column);
      else if (look === Look.two) two.push(column);
      else if (look !== Look.none) kinds.push(column);
    }
    if (made.backs[cell] === Back.loop && sound.backs[cell] !== Back.loop) loops.push(column);
  }
  const things: string[] = [];
  const tell = (columnsSeen: readonly number[], one: string, several: string): void => {
    if (columnsSeen.length === 0) return;
    things.push(`${columnsInWords(columnsSeen)} ${columnsSeen.length === 1 ? one : several}`);
  };
  tell(bare, 'is a bare string', 'are bare strings');
  tell(coloured, 'has another colour', 'have another colour');
  tell(half, 'is only half a knot', 'are only half knots');
  tell(two, 'has more than one knot', 'have more than one knot');
  tell(kinds, 'is another kind of knot', 'are another kind of knot');
  tell(loops, 'has a loop at the back', 'have a loop at the back');
  const knots = made.knots[row] as number;
  if (knots !== sound.knots[row]) things.push(`${knots} knots in place of ${sound.knots[row]}`);
  for (const side of [0, 1] as const) {
    const name = side === 0 ? 'left' : 'right';
    const edge = made.edges[2 * row + side];
    if (edge !== sound.edges[2 * row + side]) {
      things.push(
        `the ${name} edge ${edge === Edge.out ? 'steps out' : edge === Edge.in ? 'pulls in' : 'is straight'}`,
      );
    }
    if (made.sticks[2 * row + side] === Stick.yes && sound.sticks[2 * row + side] !== Stick.yes) {
      things.push(`a lead sticks out on the ${name}`);
    }
  }
  return things;
}

/** "columns 2 to 5, 7 and 9"; in parts where there are very many. */
function columnsInWords(columns: readonly number[]): string {
  const runs: string[] = [];
  for (let i = 0; i < columns.length; ) {
    let end = i;
    while (columns[end + 1] === (columns[end] as number) + 1) end++;
    const first = (columns[i] as number) + 1;
    const last = (columns[end] as number) + 1;
    if (last - first > 1) runs.push(`${first} to ${last}`);
    else for (let column = first; column <= last; column++) runs.push(String(column));
    i = end + 1;
  }
  if (runs.length > 6) return `${columns.length} columns from ${(columns[0] as number) + 1} on`;
  const head = runs.slice(0, -1).join(', ');
  const words = head === '' ? (runs[0] ?? '') : `${head} and ${runs.at(-1)}`;
  return `${columns.length === 1 ? 'column' : 'columns'} ${words}`;
}
