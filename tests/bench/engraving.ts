/** How long pictures take, beside a stylesheet parsed in the same run. */
import type { Engraver } from '../../server/engraving/engraver';
import { drawPage, drawPassage, pageNames } from '../../server/pages/svg';
import type { Score } from '../../server/score/score';
import { type Line, medians, ms } from './measure';
import { generateStylesheet, openStylesheet, parseStylesheet } from './stylesheet';

const WISH = { clefs: 'source', leaveGaps: true } as const;
const ROUNDS = 15;
/** Milliseconds that a reader waits without noticing, and for a page. */
const SNIPPET = 60;
const PAGE = 1500;

/** @param score of 100 kB */
export function pictureTimes(score: Score, engraver: Engraver): readonly Line[] {
  const stylesheet = openStylesheet(generateStylesheet(100_000));
  const [first = ''] = pageNames(score);
  const took = medians(
    {
      stylesheet: () => parseStylesheet(stylesheet),
      passage: () => drawPassage(score, { ...WISH, bars: { from: '9', to: '10' } }, engraver),
      page: () => drawPage(score, first, WISH, engraver),
    },
    ROUNDS,
  );
  return [
    { what: 'a stylesheet of 100 kB parsed', measured: ms(took.stylesheet) },
    { what: 'two bars as a picture', measured: ms(took.passage), ratio: took.passage / SNIPPET, wished: 1 },
    { what: 'the same against the stylesheet', measured: '', ratio: took.passage / took.stylesheet },
    { what: 'the first page', measured: ms(took.page), ratio: took.page / PAGE, wished: 1 },
    { what: 'the same against the stylesheet', measured: '', ratio: took.page / took.stylesheet },
  ];
}
