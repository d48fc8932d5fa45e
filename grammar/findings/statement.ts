import { entries } from './entry';

export const statementFindings = entries({});
