import type { Estimate } from '@halfhitch/geometry/thread';
import { figures } from '../view/figures.js';
import type { CutSheet, LineRole, SheetTotal, StringLine } from './sheet.js';

/** Whole millimetres: finer ones would only pretend to be known. */
export function millimetres(mm: number): string {
  return `${figures(mm)} mm`;
}

/** What a figure may be off by is rounded up, so that it is never said to be less. */
export function plusMinus(off: number): string {
  return `± ${figures(Math.ceil(off))}`;
}

export function metres({ mm, plusMinus: off }: Estimate): string {
  return `${figures(mm / 1_000, 2)} m ± ${figures(Math.ceil(off / 10) / 100, 2)}`;
}

export function sizeInWords({ size, uncertainty }: CutSheet): string {
  const one = (mm: number): string => `${millimetres(mm)} ${plusMinus(mm * uncertainty)}`;
  return `${one(size.width)} wide, ${one(size.length)} long, ${figures(size.thickness, 1)} mm ± ${figures(size.thickness * uncertainty, 1)} thick`;
}

/** How far every figure is to be trusted, and what would help. */
export function trustInWords({ uncertainty, calibration, thread }: CutSheet): string {
  const off = percent(uncertainty);
  if (calibration !== null) {
    return `Every figure may still be off by ${off}, tails and margin not counted: no two rows are pulled alike.`;
  }
  const because =
    thread.uncertainty >= 0.2
      ? 'because the thread is not known and hands pull differently'
      : 'because hands pull differently and thread flattens';
  return `Every figure may be off by ${off}, tails and margin not counted, ${because}. A swatch mends much of that.`;
}

/** What a swatch has told, and what it left unexplained. */
export function swatchInWords({ calibration }: CutSheet): string | null {
  if (calibration === null) return null;
  const { diameter, residual } = calibration;
  const like = `By the swatch the thread works up like one ${figures(diameter, 2)} mm thick`;
  if (Math.abs(residual.width) < 0.0005) return `${like}, which leaves nothing unexplained.`;
  const width = `${percent(Math.abs(residual.width), 1)} of its width`;
  const length = `${percent(Math.abs(residual.length), 1)} of its length`;
  const [across, along] = residual.width > 0 ? ['wider', 'shorter'] : ['narrower', 'longer'];
  return `${like}. That leaves ${width} and ${length} unexplained: the swatch is ${across} and ${along} than such knots would be, and the lengths here allow for it.`;
}

export function percent(share: number, decimals = 0): string {
  return `${figures(share * 100, decimals)} %`;
}

/** What is written in bold beside a swatch of colour: base strings seldom have a colour asked for. */
export function titleInWords(of: { role: LineRole; name: string; colour: string }): string {
  if (of.name !== '') return of.name;
  return of.role === 'base' ? 'Base strings' : of.colour;
}

export function whatInWords({ role, name, count, strings }: StringLine): string {
  if (role === 'lead') return `lead ${strings}`;
  const many = figures(count);
  if (role === 'string') return count === 1 ? `string ${strings}` : `${many} strings, ${strings}`;
  if (name === '') return `${many}, ${strings}`;
  return `${count === 1 ? 'base string' : `${many} base strings`}, ${strings}`;
}

export function useInWords({ role, name }: SheetTotal): string {
  if (role === 'lead') return 'leads';
  if (role === 'string') return 'strings';
  return name === '' ? 'any colour: seen in the tails only' : 'base strings';
}

export function putUpsInWords({ putUps, mostPutUps }: SheetTotal): string {
  const many = figures(putUps);
  return mostPutUps > putUps ? `${many}, at most ${figures(mostPutUps)}` : many;
}
