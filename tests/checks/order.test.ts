/** The order of playing and the dots of the source (common practice: dots at a double bar mean that their side is repeated). */
import { describe, expect, it } from 'vitest';
import { messages, passage } from '../helpers/music';

const CODE = 'order-against-repeats';
const dance = (order: string, middle: string, last = '|||', reading = ''): string[] =>
  messages(
    passage(
      `section A\nsystem upper C1 lower F4 meter C\n dessus | 1 c5 | d ${middle} (section B) 1 e | c ${last}\n`,
      `${reading}${order}\n`,
    ),
    CODE,
  );

describe('an order', () => {
  it('that plays a strain once against its dots is told', () => {
    expect(dance('order A A B', ':||:', ':||')).toEqual([
      '`order` plays B once, but the source has repeat dots where it begins and ends.',
    ]);
    expect(dance('order A B B', ':||:')).toEqual([
      '`order` plays A once, but the source has repeat dots where it ends.',
    ]);
    expect(dance('order A A B', ':||:')).toEqual([
      '`order` plays B once, but the source has repeat dots where it begins.',
    ]);
  });
  it('that follows the dots is let be, also where a strain comes back without its repeat', () => {
    expect(dance('order A A B B', ':||:')).toEqual([]);
    expect(dance('order A A B B A', ':||:')).toEqual([]);
  });
  it('is let be where there are no dots, and in a reading', () => {
    expect(dance('order A B', '||')).toEqual([]);
    expect(dance('', ':||:', '|||', 'reading one "without repeats"\n order A B\n')).toEqual([]);
  });
});
