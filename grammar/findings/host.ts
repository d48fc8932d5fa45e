import { entries } from './entry';

export const hostFindings = entries({});
