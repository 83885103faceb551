/** Wiring only: the kept study or the first example, to the solver, to the views. */
import "./style/index.css";
import { mount } from "svelte";
import { start } from "./start.svelte";
import App from "./view/App.svelte";

const target = document.getElementById("page");
if (target) {
	start();
	// In a task of its own: until then the page's static head is there, and keys are heard.
	setTimeout(() => {
		target.replaceChildren();
		mount(App, { target });
	});
}
