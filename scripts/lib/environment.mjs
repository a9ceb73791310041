// What a person may have set for all of npm, as opposed to what npm says about the script that
// it is running just now (its log level, prefix, workspace and arguments), which would mislead
// a second npm or pnpm inside it.
const PERSONAL = /^(registry|.*proxy|ca|cafile|cert|key|strict_ssl|cache|userconfig|globalconfig)$/;
const PERSONAL_ALSO =
  /^(\/\/|@|_auth|nodedir|offline|prefer_offline|fetch_|store_dir|script_shell)/;

/** The environment for a process started inside an npm script, as if from a plain shell. */
export function plainEnvironment(environment = process.env) {
  return Object.fromEntries(
    Object.entries(environment).filter(([name]) => {
      if (!/^npm_/.test(name) && name !== 'INIT_CWD') return true;
      const setting = /^npm_config_(.*)$/.exec(name)?.[1];
      return setting !== undefined && (PERSONAL.test(setting) || PERSONAL_ALSO.test(setting));
    }),
  );
}
