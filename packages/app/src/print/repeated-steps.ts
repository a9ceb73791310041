import type { InstructionPart, RowInstructions } from '@halfhitch/core';

/** A part of a row as it is printed. */
export interface PrintedPart {
  readonly text: string;
  readonly substeps: readonly string[];
  /** Where the same steps were printed first, counted from 1; null where they stand here. */
  readonly like: { readonly row: number; readonly part: number } | null;
}

/**
 * The parts of rows, with the steps of a colour change only where they are met for the first time:
 * later ones differ in nothing but which leads and which base string, which their text says.
 */
export function withoutRepeats(
  rows: readonly RowInstructions[],
): readonly (readonly PrintedPart[])[] {
  const met = new Map<string, NonNullable<PrintedPart['like']>>();
  return rows.map(({ row, parts }) =>
    parts.map((part, i): PrintedPart => {
      if (part.substeps.length === 0) return whole(part);
      const recipe = recipeOf(part);
      const like = met.get(recipe);
      if (like !== undefined) return { text: part.text, substeps: [], like };
      met.set(recipe, { row: row + 1, part: i + 1 });
      return whole(part);
    }),
  );
}

/** The parts of rows, each with all its steps. */
export function withRepeats(rows: readonly RowInstructions[]): readonly (readonly PrintedPart[])[] {
  return rows.map(({ parts }) => parts.map(whole));
}

function whole({ text, substeps }: InstructionPart): PrintedPart {
  return { text, substeps, like: null };
}

/** The steps without the leads, colours, numbers and floats in them: what the hands do. */
function recipeOf({ substeps }: InstructionPart): string {
  return substeps
    .map((step) =>
      step
        .replace(/ \([^)]*\)/g, '')
        .replace(/ It has rested [^.]*\./g, '')
        .replace(/\bL\d+\b/g, 'L')
        .replace(/\d+/g, 'N'),
    )
    .join('\n');
}
