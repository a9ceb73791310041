import { figures } from '../view/figures.js';

const MINUTE = 60;
const HOUR = 60 * MINUTE;

/** A length of time in words, no closer than it can be known: "2 h 10 min". */
export function aboutTime(seconds: number): string {
  if (seconds < MINUTE) return 'a minute';
  if (seconds < 20 * MINUTE) return minutes(Math.round(seconds / MINUTE));
  if (seconds < HOUR) return minutes(Math.round(seconds / MINUTE / 5) * 5);
  const step = seconds < 6 * HOUR ? 10 : 30;
  const whole = Math.round(seconds / MINUTE / step) * step;
  if (seconds >= 20 * HOUR) return `${figures(Math.round(seconds / HOUR))} hours`;
  const hours = Math.floor(whole / 60);
  const rest = whole % 60;
  return rest === 0 ? (hours === 1 ? '1 hour' : `${hours} hours`) : `${hours} h ${rest} min`;
}

function minutes(number: number): string {
  if (number >= 60) return '1 hour';
  return number <= 1 ? 'a minute' : `${number} minutes`;
}
