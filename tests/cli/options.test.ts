import { describe, expect, it } from 'vitest';
import { readOptions } from '../../server/cli/options';

const table = {
  json: { says: 'as JSON' },
  level: { value: 'LEVEL', among: ['error', 'warning'], says: 'a level' },
  out: { value: 'DIR', says: 'a folder' },
};

const slip = (...argv: string[]): string | undefined => {
  const given = readOptions(table, argv);
  return 'slip' in given ? given.slip : undefined;
};

describe('the options of a command line', () => {
  it('may stand before, between and after the files', () => {
    expect(readOptions(table, ['--out', 'x', 'a.bent', '--json', 'b.bent', '--level=error'])).toEqual({
      operands: ['a.bent', 'b.bent'],
      values: new Map([
        ['out', 'x'],
        ['level', 'error'],
      ]),
      flags: new Set(['json']),
    });
  });

  it('leave the hyphen to standard input and everything after -- to the files', () => {
    expect(readOptions(table, ['-', '--', '--json'])).toMatchObject({ operands: ['-', '--json'], flags: new Set() });
  });

  it('that are not known are told, with the nearest that is', () => {
    expect(slip('--jsn')).toBe('There is no option --jsn. Did you mean --json?');
    expect(slip('--zebra')).toBe('There is no option --zebra.');
    expect(slip('-j')).toMatch(/no option -j/);
    expect(slip('--constructor')).toMatch(/no option --constructor/);
    expect(slip('--__proto__=1')).toMatch(/no option --__proto__/);
  });

  it('need the value that they are to have, and no other', () => {
    expect(slip('--out')).toBe('The option --out needs a value: --out DIR.');
    expect(slip('--out=')).toBe('The option --out needs a value: --out DIR.');
    expect(slip('--out', '--json')).toBe('The option --out needs a value: --out DIR.');
    expect(slip('--json=yes')).toBe('The option --json takes no value.');
    expect(slip('--level', 'eror')).toBe('--level is one of error, warning, not “eror”. Did you mean error?');
  });

  it('stand once, for of two values one would go unheard', () => {
    expect(slip('--out', 'x', '--out', 'y')).toBe('--out stands twice, with “x” and “y”: give it once.');
    expect(slip('--json', '--json')).toBeUndefined();
  });

  it('that say nothing beside the others are told', () => {
    const idle = (...argv: string[]): string | undefined => {
      const given = readOptions(
        {
          as: { value: 'FORMAT', says: 'a format' },
          tracks: { value: 'BY', says: 'tracks', only: [{ option: 'as', values: ['midi'] }] },
          text: { says: 'as text' },
          json: { says: 'as data', not: ['text'] },
        },
        argv,
      );
      return 'slip' in given ? given.slip : undefined;
    };
    expect(idle('--as', 'midi', '--tracks', 'voice')).toBeUndefined();
    expect(idle('--as', 'mei', '--tracks', 'voice')).toBe('--tracks goes only with --as midi.');
    expect(idle('--json', '--text')).toBe('--json and --text do not go together: give one of them.');
  });
});
