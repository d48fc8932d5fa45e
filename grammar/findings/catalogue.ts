/**
 * The catalogue of findings: every code with its level, its sentence and its help page, in one place.
 * The entries of each stage stand in a file of their own beside this one.
 */
import { checkFindings } from './check';
import { counselFindings } from './counsel';
import { declarationFindings } from './declaration';
import { exportFindings } from './export';
import { hostFindings } from './host';
import { laneFindings } from './lane';
import { meiFindings } from './mei';
import { musicxmlFindings } from './musicxml';
import { recipeFindings } from './recipe';
import { rhythmFindings } from './rhythm';
import { scoreFindings } from './score';
import { signFindings } from './signs';
import { statementFindings } from './statement';
import { tuningFindings } from './tuning';

export const catalogue = {
  ...laneFindings,
  ...statementFindings,
  ...recipeFindings,
  ...declarationFindings,
  ...scoreFindings,
  ...checkFindings,
  ...counselFindings,
  ...tuningFindings,
  ...signFindings,
  ...rhythmFindings,
  ...exportFindings,
  ...musicxmlFindings,
  ...meiFindings,
  ...hostFindings,
} as const;

export type FindingCode = keyof typeof catalogue;
