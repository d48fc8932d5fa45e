import { entries } from './entry';

export const laneFindings = entries({});
