using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Accounts;

/// <summary>Consultants keep the list of people; nobody registers themselves.</summary>
internal static class PeopleEndpoints
{
    public sealed record NewPerson(string Email, string DisplayName, Role Role, string? PhoneNumber, string Password);

    public sealed record ChangedPerson(string DisplayName, Role Role, string? PhoneNumber);

    public sealed record NewPassword(string Password);

    public sealed record PersonView(Guid Id, string Email, string DisplayName, Role Role, string? PhoneNumber);

    public static void MapPeople(this IEndpointRouteBuilder app)
    {
        var people = app.MapGroup("/api/people").WithTags("People").RequireAuthorization(Access.Plan);
        people.MapGet("", ListAsync);
        people.MapPost("", CreateAsync);
        people.MapPut("/{id:guid}", UpdateAsync);
        people.MapPut("/{id:guid}/password", SetPasswordAsync);
    }

    private static async Task<List<PersonView>> ListAsync(WorkWindowsDb db, CancellationToken cancellation) =>
        await db.People.OrderBy(person => person.DisplayName).Select(person => new PersonView(
            person.Id, person.Email!, person.DisplayName, person.Role, person.PhoneNumber)).ToListAsync(cancellation);

    private static async Task<Results<Created<PersonView>, ValidationProblem>> CreateAsync(
        NewPerson request, UserManager<Person> people)
    {
        var person = new Person
        {
            UserName = request.Email,
            Email = request.Email,
            DisplayName = request.DisplayName,
            Role = request.Role,
            PhoneNumber = request.PhoneNumber,
        };
        var result = await people.CreateAsync(person, request.Password);
        return result.Succeeded
            ? TypedResults.Created($"/api/people/{person.Id}", View(person))
            : Refusal(result);
    }

    private static async Task<Results<Ok<PersonView>, NotFound, ValidationProblem, ProblemHttpResult>> UpdateAsync(
        Guid id, ChangedPerson request, Caller caller, UserManager<Person> people)
    {
        if (await people.FindByIdAsync($"{id}") is not { } person)
            return TypedResults.NotFound();
        if (caller.PersonId == id && request.Role != person.Role)
        {
            return TypedResults.Problem(
                "Another consultant must do this, so that the organization is never left without one.",
                statusCode: StatusCodes.Status409Conflict, title: "You cannot change your own role.");
        }

        (person.DisplayName, person.Role, person.PhoneNumber) =
            (request.DisplayName, request.Role, request.PhoneNumber);
        // A new stamp makes old cookies, which name the old role, invalid.
        var result = await people.UpdateSecurityStampAsync(person);
        return result.Succeeded ? TypedResults.Ok(View(person)) : Refusal(result);
    }

    private static async Task<Results<NoContent, NotFound, ValidationProblem>> SetPasswordAsync(
        Guid id, NewPassword request, WorkWindowsDb db, UserManager<Person> people, CancellationToken cancellation)
    {
        if (await people.FindByIdAsync($"{id}") is not { } person)
            return TypedResults.NotFound();
        await using var transaction = await db.Database.BeginTransactionAsync(cancellation);
        await people.RemovePasswordAsync(person);
        var result = await people.AddPasswordAsync(person, request.Password);
        if (!result.Succeeded)
            return Refusal(result);
        await people.SetLockoutEndDateAsync(person, null);
        await transaction.CommitAsync(cancellation);
        return TypedResults.NoContent();
    }

    private static PersonView View(Person person) =>
        new(person.Id, person.Email!, person.DisplayName, person.Role, person.PhoneNumber);

    private static ValidationProblem Refusal(IdentityResult result) => TypedResults.ValidationProblem(
        result.Errors.GroupBy(error => error.Code.StartsWith("Password", StringComparison.Ordinal) ? "password" : "email")
            .ToDictionary(field => field.Key, field => field.Select(error => error.Description).ToArray()));
}
