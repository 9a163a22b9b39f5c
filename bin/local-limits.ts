import { writeLocalModule } from './local-module.ts';
import { say } from './say.ts';

try {
  say(writeLocalModule() ? 'lib/limits/local-profiles.ts written.' : 'Nothing to write.');
} catch (cause) {
  say(cause instanceof Error ? cause.message : String(cause));
  process.exitCode = 1;
}
