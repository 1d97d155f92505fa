// A small program around the terminal conversation, for a real pseudo-terminal; its services are made up.
import { decideColour } from '../../src/cli/colour.ts';
import { dataFolder, draftStoreIn } from '../../src/cli/draft-store.ts';
import { runTerminalConversation } from '../../src/terminal/run.tsx';
import { fakeServices } from '../conversation/fake-services.ts';

const code = await runTerminalConversation({
  services: fakeServices(),
  draftStore: draftStoreIn(dataFolder()),
  colour: decideColour(process.env, { colour: null }, process.stdout.isTTY),
  ascii: false,
  stdin: process.stdin,
  stdout: process.stdout,
});
process.exit(code);
