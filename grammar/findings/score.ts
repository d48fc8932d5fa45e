import { entries } from './entry';

export const scoreFindings = entries({});
