import type { Language } from './choices.js';

const ENGLISH = {
  title: 'Learn',
  intro:
    'Short lessons with moving pictures. Each ends with a question that you answer by choosing; every answer shows what comes of it.',
  language: 'Language',
  left: 'I knot left-handed',
  learned: 'Gone through',
  here: 'In your chart',
  hereIntro:
    'The same lessons, made from your own chart: its turns, its edges, its changes of lead.',
  none: 'Open a chart, and its own turns and changes of lead can be looked at as lessons.',
  first: 'First at row {row}, column {column}; {knots} in all',
  first1: 'Only at row {row}, column {column}',
  large: 'The chart is too large to be searched; choose a knot of it.',
  choose: 'A knot of your choice',
  row: 'Row',
  column: 'Column',
  show: 'Show me this one',
  place: 'Your chart, row {row}, column {column}',
  mirrored: 'A lesson from your chart shows it as it is planned, for either hand.',
  changed: 'The chart has been changed since this lesson was made.',
  all: 'All lessons',
  return: 'Back to where you were',
  end: 'That was all of this lesson.',
  next: 'Next lesson: {title}',
  wait: 'Your chart is being worked out.',
} as const;

export type LearnKey = keyof typeof ENGLISH;

const GERMAN: Readonly<Record<LearnKey, string>> = {
  title: 'Lernen',
  intro:
    'Kurze Lektionen mit bewegten Bildern. Jede endet mit einer Frage, die du durch Auswählen beantwortest; jede Antwort zeigt, was daraus wird.',
  language: 'Sprache',
  left: 'Ich knüpfe mit links',
  learned: 'Durchgegangen',
  here: 'In deiner Vorlage',
  hereIntro:
    'Dieselben Lektionen an deiner eigenen Vorlage: ihre Wenden, ihre Ränder, ihre Wechsel des Leitfadens.',
  none: 'Öffne eine Vorlage, dann lassen sich ihre eigenen Wenden und Farbwechsel als Lektionen ansehen.',
  first: 'Zuerst in Reihe {row}, Spalte {column}; insgesamt {knots}',
  first1: 'Nur in Reihe {row}, Spalte {column}',
  large: 'Die Vorlage ist zu groß, um sie zu durchsuchen; wähle einen Knoten.',
  choose: 'Ein Knoten deiner Wahl',
  row: 'Reihe',
  column: 'Spalte',
  show: 'Zeig mir diesen',
  place: 'Deine Vorlage, Reihe {row}, Spalte {column}',
  mirrored: 'Eine Lektion aus deiner Vorlage zeigt sie so, wie sie geplant ist, für beide Hände.',
  changed: 'Die Vorlage wurde geändert, seit diese Lektion gemacht wurde.',
  all: 'Alle Lektionen',
  return: 'Zurück, wo du warst',
  end: 'Das war die ganze Lektion.',
  next: 'Nächste Lektion: {title}',
  wait: 'Deine Vorlage wird gerade ausgearbeitet.',
};

export type LearnWords = (
  key: LearnKey,
  values?: Readonly<Record<string, string | number>>,
) => string;

export function learnWords(language: Language): LearnWords {
  const catalogue = language === 'de' ? GERMAN : ENGLISH;
  return (key, values = {}) =>
    catalogue[key].replace(/\{(\w+)\}/g, (place, name: string) => String(values[name] ?? place));
}
