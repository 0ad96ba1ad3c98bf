"use strict";

// The season's temperatures under its bands, drawn by uPlot on the same days.
(() => {
  const place = document.getElementById("chart");
  const data = JSON.parse(document.getElementById("temperatures").textContent);
  const day = 86400;
  const height = 220;
  const style = name => getComputedStyle(document.documentElement).getPropertyValue(name).trim();

  function across(u, value, color, label) {
    const y = u.valToPos(value, "y", true);
    const { left, width } = u.bbox;
    line(u, left, y, left + width, y, color);
    u.ctx.textAlign = "right";
    u.ctx.fillText(label, left + width - 4, y - 4 * devicePixelRatio);
  }

  function upright(u, time, color) {
    const x = u.valToPos(time + day / 2, "x", true);
    const { top, height: tall } = u.bbox;
    line(u, x, top, x, top + tall, color);
  }

  function line(u, x1, y1, x2, y2, color) {
    u.ctx.strokeStyle = u.ctx.fillStyle = color;
    u.ctx.lineWidth = devicePixelRatio;
    u.ctx.setLineDash([]);
    u.ctx.font = `${12 * devicePixelRatio}px system-ui, sans-serif`;
    u.ctx.beginPath();
    u.ctx.moveTo(x1, y1);
    u.ctx.lineTo(x2, y2);
    u.ctx.stroke();
  }

  function marks(u) {
    u.ctx.save();
    across(u, 20, style("--muted"), "20 °F");
    across(u, 32, style("--muted"), "32 °F");
    data.leafOuts.forEach(leafOut => upright(u, leafOut.day, style("--open")));
    if (data.today !== null) {
      upright(u, data.today, style("--ink"));
    }
    u.ctx.restore();
  }

  function draw() {
    const axis = { stroke: style("--muted"), grid: { stroke: style("--line"), width: 1 }, ticks: { show: false } };
    const series = (label, color, dash) => ({
      label,
      stroke: style(color),
      width: 1.5,
      dash,
      points: { show: false },
      value: (_, value) => (value === null ? "–" : `${Math.round(value)} °F`),
    });
    const first = data.days[0];
    const last = data.days[data.days.length - 1] + day;
    return new uPlot(
      {
        width: place.clientWidth,
        height,
        tzDate: time => uPlot.tzDate(new Date(time * 1000), "Etc/UTC"),
        padding: [8, 0, 0, 0],
        cursor: { drag: { x: false, y: false } },
        legend: { live: true },
        scales: { x: { range: () => [first, last] } },
        axes: [{ ...axis, show: false }, { ...axis, size: 40, values: (_, values) => values.map(value => `${value}°`) }],
        series: [
          { label: "Day", value: (_, time) => (time === null ? "–" : new Date(time * 1000).toUTCString().slice(0, 11)) },
          series("minimum", "--cold"),
          series("maximum", "--warm"),
          series("minimum, forecast", "--cold", [4, 3]),
          series("maximum, forecast", "--warm", [4, 3]),
        ],
        hooks: { draw: [marks] },
      },
      [data.days, data.minObserved, data.maxObserved, data.minForecast, data.maxForecast],
      place,
    );
  }

  let chart = draw();
  const redraw = () => {
    chart.destroy();
    chart = draw();
  };
  new ResizeObserver(() => {
    if (place.clientWidth !== chart.width) {
      chart.setSize({ width: place.clientWidth, height });
    }
  }).observe(place);
  matchMedia("(prefers-color-scheme: dark)").addEventListener("change", redraw);
})();
