/** The part of Eleventy's programmatic interface that the commands use; it ships no types. */
declare module '@11ty/eleventy' {
  import type { EleventyConfig } from '../eleventy/plugin.ts';

  export interface EleventyOptions {
    readonly source: 'cli' | 'script';
    readonly configPath: string;
    readonly quietMode: boolean;
    readonly runMode: 'build' | 'serve';
    readonly config: (config: EleventyConfig) => void;
  }

  export class Eleventy {
    constructor(input: string | undefined, output: string | undefined, options: EleventyOptions);
    readonly errorHandler: { log(error: unknown): void; fatal(error: unknown): void; initialMessage(): void };
    disableLogger(): void;
    /** Renders all pages and writes none. */
    toJSON(): Promise<unknown>;
  }
}
