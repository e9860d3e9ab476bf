/** The ground of pages, light and dark, for what lies round them; the style sheet has it as `--ground`. */
export const GROUND = { light: '#f2efe8', dark: '#1b1a18' } as const;
