import type { Place } from '../../draw/edit/place.js';
import { indexOf, isPlace } from '../edit/places.js';
import { inked, LatticeStroke, patchAt } from '../edit/strokes.js';
import type { LatticeEdit, LatticeSettings, LatticeSubject } from './subject.js';

const WHAT = {
  pencil: 'Draw with the pencil',
  line: 'Draw a line',
} as const;

/** What drawing on a lattice has to tell. */
export interface DrawingHost {
  readonly subject: LatticeSubject | null;
  readonly settings: LatticeSettings;
  edit(edit: LatticeEdit): void;
  choose(place: Place): void;
  pick(byte: number): void;
  say(text: string): void;
  repaint(): void;
}

/** What hand and keys do with the tools of a lattice. */
export class LatticeDrawing {
  private stroke: LatticeStroke | null = null;
  /** A line that was begun by keys. */
  private begun: LatticeStroke | null = null;
  private tapped: Place | null = null;

  constructor(private readonly host: DrawingHost) {}

  /** What is drawn, with what is in hand; null while nothing is. */
  get inHand(): Uint8Array | null {
    return (this.stroke ?? this.begun)?.bytes ?? null;
  }

  /** Forgets what is in hand. */
  drop(): void {
    this.stroke = null;
    this.begun = null;
  }

  // ---- by hand ----

  begin(place: Place): void {
    const { subject, settings } = this.host;
    if (subject === null) return;
    this.begun = null;
    const { tool, ink, symmetry } = settings;
    if (tool === 'pencil' || tool === 'line') {
      const { lattice, bytes } = subject;
      this.stroke = new LatticeStroke(lattice, bytes, tool, ink, symmetry, place);
    } else if (isPlace(subject.lattice, place)) this.tapped = place;
    this.host.repaint();
  }

  follow(place: Place): void {
    this.stroke?.moveTo(place);
    if (this.tapped !== null && !same(this.tapped, place)) this.tapped = null;
    this.host.repaint();
  }

  finish(): void {
    const { stroke, tapped } = this;
    this.stroke = null;
    this.tapped = null;
    if (stroke !== null)
      this.edit(stroke.bytes, this.host.settings.tool === 'line' ? WHAT.line : WHAT.pencil);
    else if (tapped !== null) this.act(tapped);
    this.host.repaint();
  }

  cancel(): void {
    this.stroke = null;
    this.tapped = null;
    this.host.repaint();
  }

  // ---- by keys ----

  /** The cursor has moved: a line that was begun goes with it. */
  moveTo(place: Place): void {
    this.begun?.moveTo(place);
  }

  /** @returns whether there was something to give up */
  escape(): boolean {
    if (this.inHand === null) return false;
    this.begun = null;
    this.cancel();
    return true;
  }

  drawAt(place: Place): void {
    const { subject, settings } = this.host;
    if (subject === null) return;
    const { lattice, bytes } = subject;
    const { tool, ink, symmetry } = settings;
    if (tool === 'pencil') this.edit(inked(lattice, bytes, [place], ink, symmetry), WHAT.pencil);
    else if (tool !== 'line') this.act(place);
    else if (this.begun === null) {
      this.begun = new LatticeStroke(lattice, bytes, tool, ink, symmetry, place);
      this.host.say('A line is begun. Go to its other end and press Enter; Escape gives it up.');
    } else {
      const { begun } = this;
      this.begun = null;
      this.edit(begun.bytes, WHAT.line);
    }
    this.host.repaint();
  }

  /** What a tap or Enter does with tools that do it in one place. */
  private act(place: Place): void {
    const { subject, settings } = this.host;
    if (subject === null) return;
    const { lattice, bytes } = subject;
    const { tool, ink, symmetry } = settings;
    if (!isPlace(lattice, place)) return;
    if (tool === 'choose') this.host.choose(place);
    else if (tool === 'pick') this.host.pick(bytes[indexOf(lattice, place)] as number);
    else if (tool === 'fill') {
      this.edit(inked(lattice, bytes, patchAt(lattice, bytes, place), ink, symmetry), 'Fill');
    }
  }

  private edit(bytes: Uint8Array, what: string): void {
    const before = this.host.subject?.bytes;
    if (before === undefined || bytes.every((byte, at) => byte === before[at])) return;
    this.host.edit({ bytes, what });
  }
}

function same(one: Place, other: Place): boolean {
  return one.row === other.row && one.column === other.column;
}
