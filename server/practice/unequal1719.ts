/**
 * Which value is unequal under which sign of measure.
 *
 * Hotteterre, L'Art de préluder, 1719, chapter XI, pages 57 to 61, as digested (confirmed by the digest's text; its 6/8 for
 * loures and forlanes is a misprint for 6/4). 3 and 3/4 are one row, as are 6/8, 9/8 and 12/8, and 2/4 and 4/8.
 */
import { type Time, time } from '../../grammar/time';

/** A row: the value of which pairs are unequal; none where quavers are as a rule equal. */
export interface UnequalRow {
  readonly value: Time | undefined;
  readonly remark: string;
}

const CROTCHET = time(1, 4);
const QUAVER = time(1, 8);
const SEMIQUAVER = time(1, 16);

const triple: UnequalRow = {
  value: QUAVER,
  remark:
    'quavers, nearly always in French music; equal where they leap or are mixed with semiquavers: chaconnes, sarabandes, menuets',
};
const compound: UnequalRow = { value: SEMIQUAVER, remark: 'semiquavers: gigues' };
const light: UnequalRow = { value: SEMIQUAVER, remark: 'semiquavers: two light beats' };

export const unequal1719: Readonly<Record<string, UnequalRow>> = {
  C: { value: SEMIQUAVER, remark: 'semiquavers; quavers equal: preludes, allemandes, fugues' },
  'cut-C': { value: undefined, remark: 'quavers are usually equal: gavottes, alla breve' },
  '2': { value: QUAVER, remark: 'quavers: overtures, marches, bourrées' },
  '3/2': { value: CROTCHET, remark: 'crotchets: plaintes, courantes' },
  '3': triple,
  '3/4': triple,
  '3/8': { value: SEMIQUAVER, remark: 'semiquavers: passepieds, canaries' },
  '6/4': { value: QUAVER, remark: 'quavers: loures, forlanes, gigues, the second parts of overtures' },
  '6/8': compound,
  '9/8': compound,
  '12/8': compound,
  '2/4': light,
  '4/8': light,
};

export const rowOf = (sign: string): UnequalRow | undefined =>
  Object.hasOwn(unequal1719, sign) ? unequal1719[sign] : undefined;
