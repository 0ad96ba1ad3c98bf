using System.CommandLine;
using WorkWindows.Service.Commands;

var root = new RootCommand("Work windows for woodland habitat tasks.") { EvaluateCommand.Create() };
var result = root.Parse(args);
return result.Invoke();
