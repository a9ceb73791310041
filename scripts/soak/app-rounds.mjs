// What is done in the workbench, again and again.

/** Put into the page of the workbench: opens a chart to draw on. */
export function openChart() {
  const { session } = document.querySelector('halfhitch-workbench');
  const rows = 24;
  const columns = 16;
  session.openChart({
    name: 'Heron',
    rows,
    columns,
    colours: [
      { key: '.', hex: '#f4f1e8', name: 'chalk' },
      { key: 'b', hex: '#1f6fb2', name: 'lake blue' },
      { key: 'o', hex: '#d9642a', name: 'buoy orange' },
    ],
    cells: Uint8Array.from({ length: rows * columns }, (_, i) => (i * 7 + (i >> 4)) % 3),
  });
}

/**
 * One round: a line of knots is drawn, taken back, done again and taken back, as the buttons of the
 * page do it.
 */
export async function drawAndUndo(round) {
  const { session } = document.querySelector('halfhitch-workbench');
  const { chart } = session.project;
  const cells = chart.cells.slice();
  for (let i = 0; i < 9; i++) cells[(round * 31 + i) % cells.length] = (round + i) % 3;
  session.edit({ chart: { ...chart, cells } }, 'Draw a line');
  session.undo();
  session.redo();
  session.undo();
  await new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve, 0)));
}

export const VIEWS = ['draw', 'check', 'cut', 'tie', 'learn', 'keep'];

/** Goes to a view, and waits until it is there. */
export async function goTo(view) {
  const frame = () => new Promise((resolve) => requestAnimationFrame(() => resolve()));
  location.hash = view;
  for (let i = 0; i < 600 && document.querySelector(`halfhitch-${view}`) === null; i++)
    await frame();
  for (let i = 0; i < 4; i++) await frame();
}

/** Waits until nothing is being worked out any more. */
export async function settle() {
  const { session } = document.querySelector('halfhitch-workbench');
  for (let i = 0; i < 300; i++) {
    if (session.piece?.chart === session.project.chart) return;
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
}
