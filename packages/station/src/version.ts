/** Version of the command and of the engine behind it. */
export const VERSION = '0.1.0';
