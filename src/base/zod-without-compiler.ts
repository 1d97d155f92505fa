import * as z from 'zod';

// Most files are checked once per run: compiling a checker for each costs more than it saves. The bundler puts this before
// every schema, so that zod itself is loaded only with the first of them, in the advisor's thread too.
z.config({ jitless: true });
