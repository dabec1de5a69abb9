// Keys by the names that pages see, as the code points of the WebDriver standard (17.4.2 Keyboard actions).

const KEYS = {
  Backspace: "\uE003", Tab: "\uE004", Enter: "\uE007", Shift: "\uE008", Control: "\uE009", Escape: "\uE00C",
  Space: " ", End: "\uE010", Home: "\uE011", ArrowLeft: "\uE012", ArrowUp: "\uE013", ArrowRight: "\uE014",
  ArrowDown: "\uE015", Delete: "\uE017",
};

// Down in order, up in reverse: ["Shift", "Tab"].
export function pressed(names) {
  const keys = names.map((name) => KEYS[name] ?? name);
  return [...keys.map((value) => ({ type: "keyDown", value })),
    ...keys.reverse().map((value) => ({ type: "keyUp", value }))];
}

export const typed = (text) => [...text].flatMap((letter) => pressed([letter]));
