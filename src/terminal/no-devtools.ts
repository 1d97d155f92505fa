/**
 * Stands in for `react-devtools-core` in the bundle: Ink imports it by name, and the real one would
 * more than double the start-up time for something no user of this program opens.
 */
const noDevtools = {
  initialize(): void {},
  connectToDevTools(): void {},
};

export default noDevtools;
