import { describe, expect, it } from 'vitest';
import { directionOfText, Messages, placesOf } from '../src/messages/catalogue.js';
import { ENGLISH } from '../src/messages/english.js';
import { GERMAN } from '../src/messages/german.js';
import { MESSAGES } from '../src/messages/words.js';

const small = () => new Messages({ hello: 'Hello {name}', bye: 'Bye' });

describe('the catalogues of messages', () => {
  it('have the same keys and, for each, the same places', () => {
    expect(Object.keys(GERMAN).sort()).toEqual(Object.keys(ENGLISH).sort());
    for (const key of MESSAGES.keys) {
      expect([key, placesOf(GERMAN[key]).sort()]).toEqual([key, placesOf(ENGLISH[key]).sort()]);
    }
  });

  it('leave nothing in English but what is the same in both languages', () => {
    const same = MESSAGES.keys.filter((key) => GERMAN[key] === ENGLISH[key]);
    expect(same).toEqual(['name.lead']);
  });

  it('choose the nearest language, and English where there is none', () => {
    const messages = small();
    messages.add('de', { hello: 'Hallo {name}' });
    messages.add('pt-BR', { bye: 'Tchau' });
    expect(messages.in('de-AT')('hello', { name: 'Tarn' })).toBe('Hallo Tarn');
    expect(messages.in('de')('bye')).toBe('Bye');
    expect(messages.in('pt_br')('bye')).toBe('Tchau');
    expect(messages.in('pt')('bye')).toBe('Bye');
    expect(messages.in('')('bye')).toBe('Bye');
    expect(messages.languageFor('xx')).toBe('en');
  });

  it('refuse a message with a place that is never filled, or one without end', () => {
    expect(() => small().add('de', { hello: 'Hallo {nmae}' })).toThrow(/\{nmae\}/);
    expect(() => small().add('de', { bye: 'x'.repeat(2001) })).toThrow(
      /has 2001 characters; the most is/,
    );
  });

  it('fill places with text only, and leave unknown ones to be seen', () => {
    const say = small().in('en');
    expect(say('hello', { name: '{name} <b>' })).toBe('Hello {name} <b>');
    expect(say('hello')).toBe('Hello {name}');
  });

  it('know which way languages are written', () => {
    expect(['ar-EG', 'he', 'fa', 'ur_PK'].map(directionOfText)).toEqual([
      'rtl',
      'rtl',
      'rtl',
      'rtl',
    ]);
    expect(['en', 'de', 'ja', ''].map(directionOfText)).toEqual(['ltr', 'ltr', 'ltr', 'ltr']);
  });
});
