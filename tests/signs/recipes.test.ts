/** Tables typed at random: whatever a recipe says, nothing fails and no time is lost. */
import { describe, expect, it } from 'vitest';
import { add, compare, isNegative, ZERO } from '../../grammar/time';
import { Chance, numbersOf } from '../helpers/chance';
import { eventsOfVoice, gaps, performed } from '../helpers/realised';

const VALUES = ['1', '2.', '4', '8.', '16', '32'] as const;
const FORMS = ['play', 'print'] as const;

const steps = (chance: Chance): string =>
  Array.from({ length: chance.between(1, 5) }, () => chance.pick(['0', '+1', '-1', '-2', '+1#', '-1n'])).join(' ');

const lasting = (chance: Chance): string =>
  chance.pick(['', '', ' for 1/2', ' for 3/4', ' at 11 a second', ' at 8 a pulse', ' at 32', ' leaned']);

function phrase(chance: Chance): string {
  return chance.pick([
    `${steps(chance)}${lasting(chance)}`,
    `(${steps(chance)}) repeated${chance.pick(['', ' for 1/3', ' at 7 a second', ' at 64'])}`,
    chance.pick(['hold', 'hold 1/4', 'rest 1/4', 'rest']),
  ]);
}

const recipe = (chance: Chance): string =>
  [chance.pick(['on beat', 'before beat']), ...Array.from({ length: chance.between(1, 4) }, () => phrase(chance))].join(
    ', ',
  );

describe('a recipe typed at random', () => {
  it.each(Array.from({ length: 40 }, (_, seed) => seed))('conserves time, seed %i', (seed) => {
    const chance = new Chance(numbersOf(seed, 4000));
    for (let round = 0; round < 12; round++) {
      const from = chance.pick(['', ' from couperin-1713', ' from quantz-1752']);
      const before = `table own${from}\n  zz : ${recipe(chance)}\n  ca : ${recipe(chance)}`;
      const lane = VALUES.map((value) => `${value} d5${chance.pick(["'zz", "'ca", "'zz'ca", "'zz(from main)"])} 4 c`);
      const made = performed({
        lanes: [lane.join(' ')],
        table: 'own',
        before,
        meter: '',
        tempo: chance.pick(['4 at 40', '4 at 90', '2 at 120']),
        form: chance.pick(FORMS),
      });
      const events = eventsOfVoice(made);
      const last = events.at(-1);
      const whole = last === undefined ? ZERO : add(last.onset, last.duration);
      expect([before, gaps(events, ZERO, whole)]).toEqual([before, []]);
      expect([before, events.filter(({ duration }) => isNegative(duration))]).toEqual([before, []]);
      expect(compare(whole, made.pieces[0]?.piece.duration ?? ZERO)).toBe(0);
    }
  });
});
