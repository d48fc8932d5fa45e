import { entries } from './entry';

export const exportFindings = entries({});
