/** D. G. Türk, Klavierschule, 1789, ch. III. */
import { describe, expect, it } from 'vitest';
import { notes, type Passage, played } from '../../helpers/realised';

const by1789 = (lane: string, more: Partial<Passage> = {}): Passage => ({
  lanes: [lane],
  table: 'turk-1789',
  tempo: '4 at 60',
  ...more,
});

describe('Türk', () => {
  it('sec. 11: the long appoggiatura has half of a note of two equal parts: a crotchet is two quavers, a minim two crotchets (confirmed)', () => {
    expect(played(by1789('4 d5 {small 8 d} 4 c', { meter: '2/4' }))).toBe('d5:1/4 d5:1/8 c5:1/8');
    expect(played(by1789('2 d5 {small 8 d} 2 c'))).toBe('d5:1/2 d5:1/4 c5:1/4');
  });

  it('sec. 12: before a dotted note it has two parts and the note one, the length of the dot (confirmed)', () => {
    expect(played(by1789('{small 8 d5} 4. c5', { meter: '3/8' }))).toBe('d5:1/4 c5:1/8');
    expect(played(by1789('{small 8 d5} 2. c5', { meter: '3/4' }))).toBe('d5:1/2 c5:1/4');
  });

  it('warns that the written value of the small note does not show its length (confirmed)', () => {
    const as = (value: string): string => played(by1789(`2 d5 {small ${value} d} 2 c`));
    expect(as('16')).toBe(as('8'));
    expect(as('4')).toBe(as('8'));
  });

  it('sec. 13: before a note tied to another it has the whole of the first (from memory)', () => {
    expect(played(by1789('{small 8 d5} 2. c5= 4 c', { meter: 'C' }))).toBe('d5:3/4 c5:1/4');
  });

  it('shortens it before repeated notes (from memory), and where the harmony would suffer (sec. 25: confirmed; not by how much)', () => {
    const lean = (passage: Passage): string => played(passage).split(' ')[1] ?? '';
    const moving = { lanes: ['2 d5 {small 8 d} 2 c', '2 g3 8 c a3 g f'], table: 'turk-1789', tempo: '4 at 60' };
    expect(lean(by1789('2 d5 {small 8 d} 4 c c'))).not.toBe(lean(by1789('2 d5 {small 8 d} 4 c b4')));
    expect(lean(moving)).not.toBe('d5:1/4');
  });

  it('has half of a note before a rest too: that it may take the whole there is likely, not a rule (from memory)', () => {
    expect(played(by1789('{small 8 d5} 2 c5 2 r'))).toBe('d5:1/4 c5:1/4 r:1/2');
  });

  it('begins the trill with the upper note (Grove, “Shake”: confirmed)', () => {
    expect(notes(by1789("2 d5'tr"))).toMatch(/^e5 d5 /);
  });
});
