export type ToolName = 'pencil' | 'line' | 'frame' | 'block' | 'fill' | 'pick' | 'select' | 'view';

export interface Tool<Name extends ToolName = ToolName> {
  readonly name: Name;
  readonly label: string;
  /** Chooses it while the chart has the focus. */
  readonly key: string;
  readonly about: string;
}

export const TOOLS: readonly Tool[] = [
  { name: 'pencil', label: 'Pencil', key: 'p', about: 'Draw knot by knot' },
  { name: 'line', label: 'Line', key: 'l', about: 'Draw a straight line from one knot to another' },
  { name: 'frame', label: 'Frame', key: 'o', about: 'Draw round a rectangle' },
  { name: 'block', label: 'Block', key: 'b', about: 'Draw a whole rectangle' },
  { name: 'fill', label: 'Fill', key: 'f', about: 'Fill a patch of one colour' },
  { name: 'pick', label: 'Pick up', key: 'k', about: 'Take the colour of a knot to draw with' },
  {
    name: 'select',
    label: 'Select',
    key: 's',
    about: 'Mark out a rectangle; drag it to move what is in it, with Ctrl to leave it behind too',
  },
  { name: 'view', label: 'Move view', key: 'v', about: 'Push the chart about without drawing' },
];

/** "Pencil (P): Draw knot by knot" */
export function toolInWords({ label, key, about }: Tool): string {
  return `${label} (${key.toUpperCase()}): ${about}`;
}
