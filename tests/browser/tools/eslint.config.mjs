// The rules for the page scripts, joined as tests/browser_script/check.py joins them: each file is one whole script.
import { readFileSync } from "node:fs";
import js from "@eslint/js";
import globals from "globals";

/** What the declarations in script/types name: check.py writes it beside the joined scripts. */
const declared = JSON.parse(readFileSync("globals.json", "utf-8"));

export default [
  js.configs.recommended,
  {
    languageOptions: { ecmaVersion: 2022, sourceType: "script", globals: { ...globals.browser, ...declared } },
    rules: {
      eqeqeq: "error",
      // Python's blanks and control characters are looked for on purpose.
      "no-control-regex": "off",
      "no-shadow": ["error", { builtinGlobals: false }],
      "no-unused-vars": ["error", { ignoreRestSiblings: true }],
      "no-var": "error",
      "prefer-const": ["error", { destructuring: "all" }],
    },
  },
  { files: ["offline*.js"], languageOptions: { globals: globals.serviceworker } },
];
