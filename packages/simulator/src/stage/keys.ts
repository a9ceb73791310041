import type { Handling } from './handling.js';

const TURN_STEP = Math.PI / 24;
const NUDGE = 0.05;

/** What a key asks of a stage, or null when the stage has no use for it. */
export function deedOf(event: KeyboardEvent, handling: Handling): (() => void) | null {
  const { stage } = handling;
  switch (event.key.length === 1 ? event.key.toLowerCase() : event.key) {
    case ' ':
      return () => handling.playOrPause();
    case 'ArrowRight':
      return goOn(event, handling, 1);
    case 'ArrowLeft':
      return goOn(event, handling, -1);
    case 'ArrowUp':
      return () => handling.scrub(stage.position - NUDGE);
    case 'ArrowDown':
      return () => handling.scrub(stage.position + NUDGE);
    case 'Home':
      return () => handling.scrub(0);
    case 'End':
      return () => handling.scrub(stage.length);
    case '0':
      return () => handling.lookHome();
    case 'f':
      return () => stage.flip();
    case 'a':
      return () => handling.look(-TURN_STEP, 0);
    case 'd':
      return () => handling.look(TURN_STEP, 0);
    case 'w':
      return () => handling.look(0, TURN_STEP);
    case 's':
      return () => handling.look(0, -TURN_STEP);
    default:
      return null;
  }
}

/** By moves, or with the shift key by whole half hitches or steps. */
function goOn(event: KeyboardEvent, handling: Handling, way: 1 | -1): (() => void) | null {
  const { stage } = handling;
  if (stage.still) return null;
  return () => (event.shiftKey ? stage.step(way) : handling.move(way));
}
