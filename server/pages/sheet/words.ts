/** How a teaching sheet names things. */
export const capital = (words: string): string => `${words.slice(0, 1).toUpperCase()}${words.slice(1)}`;

/** Without its folder. */
export const fileName = (path: string): string => path.slice(path.lastIndexOf('/') + 1);
