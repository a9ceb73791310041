import { Fault } from './fault.js';
import { Machine } from './machine.js';
import type { State } from './state.js';
import type { StepList } from './steplist.js';
import type { StringId } from './strings.js';

const LEAST_BETWEEN_MARKS = 1024;

/** Steps between marks for each string: marks of a plan of very many strings are large. */
const STEPS_A_STRING = 16;

/**
 * A position in a list of steps that can be moved both ways. Going back replays from a state
 * kept every 1,024 steps (every 16 for each string, where that is more), so a move costs at most that
 * many steps wherever it leads.
 */
export class Cursor {
  readonly steps: StepList;
  private readonly apart: number;
  private readonly marks: State[];
  private machine: Machine;
  private position = 0;
  /** Index of the first step that cannot be done; the length of the list when all can. */
  private reachable: number;

  constructor(steps: StepList, hung: readonly StringId[]) {
    this.steps = steps;
    this.apart = Math.max(LEAST_BETWEEN_MARKS, STEPS_A_STRING * steps.strings.length);
    this.machine = new Machine(steps.strings, hung);
    this.marks = [this.machine.state()];
    this.reachable = steps.length;
  }

  /** How many steps have been done. */
  get done(): number {
    return this.position;
  }

  get state(): State {
    return this.machine.state();
  }

  /**
   * Goes to where `target` steps are done, or as far as the steps can be done.
   * @returns how many steps are done then
   */
  seek(target: number): number {
    const goal = Math.max(0, Math.min(Math.trunc(target) || 0, this.reachable));
    const mark = Math.min(Math.floor(goal / this.apart), this.marks.length - 1);
    if (goal < this.position || mark * this.apart > this.position) {
      this.machine = Machine.of(this.marks[mark] as State);
      this.position = mark * this.apart;
    }
    const { op, a, b } = this.steps;
    while (this.position < goal) {
      const i = this.position;
      if (this.machine.run(op[i] as number, a[i] as number, b[i] as number) !== Fault.none) {
        this.reachable = i;
        break;
      }
      this.position++;
      if (this.position === this.marks.length * this.apart) {
        this.marks.push(this.machine.state());
      }
    }
    return this.position;
  }
}
