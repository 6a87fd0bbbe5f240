import { render } from "preact";
import { App } from "./app";
import { plan, start } from "./state";
import "./styles/face.css";
import "./styles/page.css";
import "./styles/figure.css";
import "./styles/cure.css";
import "./styles/stages.css";
import "./styles/phone.css";
import "./styles/print.css";

const root = document.querySelector<HTMLElement>("#page");
if (root) {
  render(<App />, root);
  start();
  plan.subscribe((p) => {
    if (p) document.title = `${p.piece.name} · pourwright`;
  });
}
