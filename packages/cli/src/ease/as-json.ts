import {
  type BestWay,
  type Chart,
  coloursUsed,
  type EasierReading,
  type Effort,
  type Gain,
  gainInWords,
  suggestionInWords,
} from '@halfhitch/core';

/** The answer as one object; the order of its keys is part of the stable interface. */
export function easeAsJson(chart: Chart, reading: EasierReading, way: BestWay): string {
  const key = (colour: number): string => chart.colours[colour]?.key ?? '';
  const answer = {
    ok: reading.ok,
    chart: { rows: chart.rows, columns: chart.columns, colours: coloursUsed(chart) },
    edge: way.edge,
    start: way.current.start,
    effort: figures(reading.before),
    suggestions: reading.suggestions.map((suggestion) => ({
      kind: suggestion.kind,
      start: suggestion.choice.start,
      cells: suggestion.cells.map(({ row, column, from, to }) => ({
        row: row + 1,
        column: column + 1,
        from: key(from),
        to: key(to),
      })),
      ofShape: suggestion.ofShape,
      saves: figures(suggestion.gain),
      message: `${suggestionInWords(chart, suggestion)} ${gainInWords(suggestion.gain)}`,
    })),
    untried: reading.untried,
    ways: way.ways.map(({ start, mirroring, state, effort }) => ({
      start,
      mirroring,
      state,
      effort: figures(effort),
    })),
  };
  return `${JSON.stringify(answer)}\n`;
}

function figures(of: Gain | Effort) {
  const { changes, edgeChanges, leads, floats, floatKnots, longFloats, seconds } = of;
  const rounded = Math.round(floatKnots * 100) / 100;
  return { changes, edgeChanges, leads, floats, floatKnots: rounded, longFloats, seconds };
}
