using NodaTime;
using WorkWindows.Feeds.Portfolio;
using static WorkWindows.Feeds.Tests.Portfolio.TaskText;

namespace WorkWindows.Feeds.Tests.Portfolio;

public class TaskFileTests
{
    [Fact]
    public void Read_GivesEveryField()
    {
        var row = Assert.Single(Read(
            "hinge-1, north ,hinge-cut,12.5,acres,3,2026-03-31,2026-02-16,felling; felling,lead@example.org").Rows);
        Assert.Equal(
            (2, "hinge-1", "north", "hinge-cut", 12.5, QuantityUnit.Acres, 3, "lead@example.org"),
            (row.Line, row.Key, row.Parcel, row.Practice.Id, row.Quantity, row.Unit, row.CrewSize, row.CrewLead));
        Assert.Equal((new LocalDate(2026, 3, 31), new LocalDate(2026, 2, 16)), (row.Deadline, row.ScheduledOn));
        Assert.Equal(["felling"], row.Prerequisites);
    }

    [Fact]
    public void Read_LeavesEmpty_WhatALineDoesNotGive()
    {
        var row = Assert.Single(Read("burn-1,south,prescribed-burn,4,hours,6,,,,").Rows);
        Assert.Equal((null, null, null), (row.Deadline, row.ScheduledOn, row.CrewLead));
        Assert.Empty(row.Prerequisites);
    }

    [Fact]
    public void Read_TakesColumnsInAnyOrder_AndOnlyThoseThatAreRequired() =>
        Assert.Equal("plant-1", Assert.Single(ReadText(
            "unit,quantity,crewSize,practice,parcel,task\r\ntrees,40,4,conifer-underplanting,north,plant-1").Rows).Key);

    [Fact]
    public void Read_AcceptsQuotes_BlankLines_AndAByteOrderMark()
    {
        var rows = ReadText(
            $"\uFEFF{Header}\n\"a, then b\",north,cleanup,1,acres,1,,,,\n\n"
            + "b,north,cleanup,1,acres,1,,,\"a, then b\",\n").Rows;
        Assert.Equal([(2, "a, then b"), (4, "b")], rows.Select(row => (row.Line, row.Key)));
        Assert.Equal(["a, then b"], rows[1].Prerequisites);
    }

    [Fact]
    public void Read_AcceptsPrerequisites_ThatComeLaterInTheFile() =>
        Assert.True(Read("b,north,cleanup,1,acres,1,,,a,", "a,north,hinge-cut,1,acres,1,,,felling,").IsAccepted);
}
