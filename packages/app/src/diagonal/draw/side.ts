import { html, type TemplateResult } from 'lit';
import '../../draw/palette/palette.js';
import type { Symmetry } from '../../draw/edit/symmetry.js';
import type { ColourUses, PaletteEdit } from '../../draw/palette/palette.js';
import type { DiagonalChange, DiagonalProject } from '../../project/project.js';
import { counted } from '../../view/figures.js';
import { readingOf, relaid, usesOf } from '../edit/pattern.js';
import { symmetriesOf } from '../edit/symmetry.js';
import { solveCard } from '../solve/solve-card.js';
import type { Solving } from '../solve/solving.js';
import type { WishSettings } from '../solve/wish-form.js';
import { changingCard } from './changing-card.js';
import { orderCard, stringsCard } from './strings-card.js';

export interface SideWish {
  readonly project: DiagonalProject;
  readonly solving: Solving;
  /** What the search is told. */
  readonly wish: WishSettings;
  /** What strings are hung in. */
  readonly stringColour: number;
  /** What is drawn with, in pictures. */
  readonly cell: number;
  readonly symmetry: Symmetry;
  /** The row that has the cursor. */
  readonly row: number;
  find(): void;
  setWish(change: Partial<WishSettings>): void;
  chooseString(colour: number): void;
  setString(slot: number): void;
  chooseSymmetry(symmetry: Symmetry): void;
  /** Changes the pattern; what can't be is said. */
  edit(make: () => DiagonalChange, what: string): void;
  onPalette(edit: PaletteEdit): void;
}

/** What stands beside a pattern that is drawn: the search, its strings, changes and colours. */
export function side(wish: SideWish): TemplateResult {
  const { project, solving } = wish;
  const { pattern } = project;
  const { colours, start, rows } = pattern;
  return html`
    <section class="card solve-card" aria-labelledby="solve-name">
      ${solveCard(project, wish.wish, solving.search, solving.offer, solving.found, {
        find: () => wish.find(),
        stop: () => solving.stop(),
        set: (change) => wish.setWish(change),
        look: (at) => solving.look(at),
        take: () => solving.takeNearest(),
        leave: () => solving.leave(),
      })}
    </section>
    <section class="card" aria-labelledby="strings-name">
      ${stringsCard(
        colours,
        start,
        wish.stringColour,
        (colour) => wish.chooseString(colour),
        (slot) => wish.setString(slot),
      )}
      ${orderCard(colours, start, readingOf(pattern).order, Math.min(wish.row, rows - 1))}
    </section>
    <section class="card" aria-labelledby="changing-name">
      ${changingCard({
        project,
        symmetry: wish.symmetry,
        has: symmetriesOf(pattern),
        choose: (symmetry) => wish.chooseSymmetry(symmetry),
        relay: (lattice) => wish.edit(() => relaid(project, lattice), 'Change the size'),
        edit: (make, what) => wish.edit(make, what),
      })}
    </section>
    <section class="card draw-legend" aria-labelledby="legend-name">
      <h2 id="legend-name">Colours</h2>
      <halfhitch-palette
        .colours=${colours}
        .uses=${colourUses(project)}
        .colour=${wish.cell < colours.length ? wish.cell : 0}
        .ground=${null}
        @palette-edit=${({ detail }: CustomEvent<PaletteEdit>) => wish.onPalette(detail)}
      ></halfhitch-palette>
    </section>
  `;
}

function colourUses(project: DiagonalProject): ColourUses {
  const many = usesOf(project);
  return {
    many,
    inWords: (count) => `Hangs or is wanted in ${counted(count, 'place')}.`,
    first: (colour) => ((many[colour] ?? 0) > 0 ? {} : null),
  };
}
