// Ink takes the terminal for a build log where one of these is set, and decides so when it is loaded: import this first.
delete process.env.CI;
delete process.env.CONTINUOUS_INTEGRATION;
