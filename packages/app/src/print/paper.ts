export type PaperName = 'a4' | 'letter';

export interface Paper {
  readonly name: PaperName;
  readonly label: string;
  /** What is left between the margins, mm. */
  readonly width: number;
  readonly height: number;
}

/** The margins of styles/sheets.css, mm: the number of the page stands in the lower one. */
const MARGIN = { side: 12, top: 12, bottom: 16 } as const;

function paper(name: PaperName, label: string, width: number, height: number): Paper {
  return {
    name,
    label,
    width: width - 2 * MARGIN.side,
    height: height - MARGIN.top - MARGIN.bottom,
  };
}

/** A4 by ISO 216, Letter by ANSI/ASME Y14.1. */
export const PAPERS: Readonly<Record<PaperName, Paper>> = {
  a4: paper('a4', 'A4', 210, 297),
  letter: paper('letter', 'Letter', 215.9, 279.4),
};

/** What this part of the world mostly has in its printers. */
export function usualPaper(languages: readonly string[] = navigator.languages): PaperName {
  const region = /-(US|CA|MX|CO|CL|PH|VE|GT|CR|PA|PR|SV|NI|DO)\b/i;
  return region.test(languages[0] ?? '') ? 'letter' : 'a4';
}
