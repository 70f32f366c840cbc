/** The version of the program, as its sheets and package name it. */
export const PROGRAM_VERSION = '0.1.0';
