import type { Session } from '../project/session.js';
import type { Piece, RowSheet } from '../work/messages.js';

/** A row to be tied: its reading, its instructions, and every step of it in words. */
export interface TieRow {
  readonly sheet: RowSheet;
  /** For each knot in the order of knotting, its steps in turn. */
  readonly steps: readonly (readonly string[])[];
}

/** Rows around the one in hand; more would only take up room. */
const MOST_KEPT = 6;

/** Fetches rows of a session's piece from its worker, each once. */
export class RowSheets {
  private readonly rows = new Map<number, Promise<TieRow>>();

  constructor(
    private readonly session: Session,
    readonly piece: Piece,
  ) {}

  /** @param row from 0; one that the piece does not have is null */
  async get(row: number): Promise<TieRow | null> {
    if (row < 0 || row >= this.piece.rows) return null;
    let sheet = this.rows.get(row);
    if (sheet === undefined) {
      sheet = this.fetch(row);
      this.rows.set(row, sheet);
      // What failed is asked for again the next time.
      sheet.catch(() => this.rows.delete(row));
      for (const kept of this.rows.keys()) {
        if (this.rows.size <= MOST_KEPT) break;
        this.rows.delete(kept);
      }
    }
    return sheet;
  }

  private async fetch(row: number): Promise<TieRow> {
    const { desk } = this.session;
    const [sheet, steps] = await Promise.all([
      desk.ask({ ask: 'row', row }),
      desk.ask({ ask: 'steps', row }),
    ]);
    return { sheet, steps };
  }
}
