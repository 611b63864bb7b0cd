/** Whether everything stands in one HTML file, opened from disk. */
declare const __ONE_FILE__: boolean;
/** The program's version. */
declare const __VERSION__: string;
